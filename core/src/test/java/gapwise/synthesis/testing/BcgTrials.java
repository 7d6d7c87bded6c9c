package gapwise.synthesis.testing;

import gapwise.effect.ArmCounts;
import gapwise.effect.TwoByTwo;
import gapwise.synthesis.heterogeneity.EffectSample;
import java.util.Arrays;
import java.util.List;

/**
 * The thirteen trials of a vaccine against tuberculosis that textbooks pool: Colditz et al., JAMA
 * 1994;271:698, the rows of {@code published/bcg-vaccine}.
 */
public final class BcgTrials {
  /** Events and patients with the vaccine, events and patients without. */
  private static final int[][] COUNTS = {
    {4, 123, 11, 139},
    {6, 306, 29, 303},
    {3, 231, 11, 220},
    {62, 13598, 248, 12867},
    {33, 5069, 47, 5808},
    {180, 1541, 372, 1451},
    {8, 2545, 10, 629},
    {505, 88391, 499, 88391},
    {29, 7499, 45, 7277},
    {17, 1716, 65, 1665},
    {186, 50634, 141, 27338},
    {5, 2498, 3, 2341},
    {27, 16913, 29, 17854}
  };

  private BcgTrials() {}

  /** The fourfold tables. */
  public static List<TwoByTwo> tables() {
    return Arrays.stream(COUNTS)
        .map(c -> new TwoByTwo(new ArmCounts(c[0], c[1]), new ArmCounts(c[2], c[3])))
        .toList();
  }

  /** Their log odds ratios, log(ad/bc), with variances 1/a + 1/b + 1/c + 1/d. */
  public static EffectSample logOddsRatios() {
    double[] effects = new double[COUNTS.length];
    double[] variances = new double[COUNTS.length];
    for (int i = 0; i < COUNTS.length; i++) {
      double a = COUNTS[i][0];
      double b = COUNTS[i][1] - a;
      double c = COUNTS[i][2];
      double d = COUNTS[i][3] - c;
      effects[i] = Math.log(a * d / (b * c));
      variances[i] = 1 / a + 1 / b + 1 / c + 1 / d;
    }
    return EffectSample.of(effects, variances);
  }
}
