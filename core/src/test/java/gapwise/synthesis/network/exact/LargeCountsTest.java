package gapwise.synthesis.network.exact;

import static gapwise.synthesis.network.exact.CountedNetworks.comparison;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.effect.ArmCounts;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * With large counts the likelihood of a study is normal about its log odds ratio, so a network of
 * one study of three arms comes to the log odds ratios themselves, the difference falling as 1/n
 * (the conditional estimate lies nearer 0 by a share of about 1/n: Breslow, Biometrika 1981;68:73,
 * from memory, for one table).
 */
class LargeCountsTest {
  private static ExactNetwork times(int factor) {
    return CountedNetworks.network(
        List.of(
            new CountedStudy(
                "A",
                List.of("a", "b", "c"),
                List.of(
                    new ArmCounts(4.0 * factor, 20.0 * factor),
                    new ArmCounts(9.0 * factor, 22.0 * factor),
                    new ArmCounts(12.0 * factor, 19.0 * factor)))),
        true);
  }

  @Test
  void theDifferenceFromTheNormalNetworkShrinksAsCountsGrow() {
    double odds = Math.log(12.0 / 7 / (4.0 / 16));
    List<Double> off = new ArrayList<>();
    for (int factor : new int[] {1, 10, 100}) {
      off.add(comparison(times(factor), "c", "a").estimate() - odds);
    }
    assertTrue(off.get(0) < 0, "nearer 0: " + off);
    assertEquals(off.get(0) / 10, off.get(1), Math.abs(off.get(0)) / 50);
    assertEquals(off.get(1) / 10, off.get(2), Math.abs(off.get(1)) / 50);
  }

  @Test
  void standardErrorsBecomeThoseOfWoolf() {
    // Root of the sum of reciprocals (Woolf, Ann Hum Genet 1955;19:251), to about 1/n.
    double woolf = Math.sqrt((1 / 4.0 + 1 / 16.0 + 1 / 12.0 + 1 / 7.0) / 100);
    assertEquals(1, comparison(times(100), "c", "a").standardError() / woolf, 2e-3);
  }
}
