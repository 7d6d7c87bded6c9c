package gapwise.cohort;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.PoissonDistribution;

/**
 * How many rows of two tables of patients are alike, and whether chance may do that.
 *
 * @param alike rows of one that have a twin in the other, each used once
 * @param ofFirst rows of the first with age and length
 * @param ofSecond rows of the second
 * @param byChance how many twins chance makes in tables of this size at most, on average
 */
record SharedRows(int alike, int ofFirst, int ofSecond, double byChance) {
  /** One twin may be chance, two may be two tables of a small hospital's usual patient. */
  static final int LEAST = 3;

  /**
   * Chance that two strangers have one age in years and one length in millimetres: ages spread over
   * some forty years and lengths over some eighty millimetres, neither evenly. An assumption of
   * ours, on the side of chance.
   */
  private static final double ALIKE_BY_CHANCE = 1.0 / 1200;

  /** The same where a measured result, such as months to union, is alike too. */
  private static final double RESULT_ALIKE_BY_CHANCE = 1.0 / 40;

  /**
   * How rarely chance makes so many twins where nothing else links the two papers: among a thousand
   * papers there are half a million pairs, of which chance would pass one in two.
   */
  private static final double RARE_AMONG_STRANGERS = 1e-6;

  /** The same where a person or the hospital is the same, so that few pairs are looked at. */
  private static final double RARE_AMONG_ACQUAINTED = 1e-3;

  static SharedRows of(List<PatientPrint> first, List<PatientPrint> second) {
    List<PatientPrint> left = new ArrayList<>(second);
    int alike = 0;
    long results = 0;
    for (PatientPrint print : first) {
      Optional<PatientPrint> twin = left.stream().filter(print::maybe).findFirst();
      if (twin.isPresent()) {
        left.remove(twin.get());
        alike++;
        results += Math.min(1, print.agreeing(twin.get()));
      }
    }
    boolean resultsToo = alike > 0 && 2 * results >= alike;
    double chance = ALIKE_BY_CHANCE * (resultsToo ? resultAlikeByChance(first, second) : 1);
    return new SharedRows(
        alike, first.size(), second.size(), chance * first.size() * second.size());
  }

  /** Results that hardly vary are alike in anybody, so the two tables themselves tell how often. */
  private static double resultAlikeByChance(List<PatientPrint> first, List<PatientPrint> second) {
    long alike =
        first.stream()
            .mapToLong(one -> second.stream().filter(two -> one.agreeing(two) > 0).count())
            .sum();
    double share = (double) alike / ((long) first.size() * second.size());
    return Math.max(RESULT_ALIKE_BY_CHANCE, share);
  }

  /**
   * Whether chance hardly makes so many twins: by the law of Poisson for rare coincidences.
   *
   * @param acquainted whether something else links the two papers
   */
  boolean areBeyondChance(boolean acquainted) {
    if (alike < LEAST) {
      return false;
    }
    double rare = acquainted ? RARE_AMONG_ACQUAINTED : RARE_AMONG_STRANGERS;
    return PoissonDistribution.of(byChance).survivalProbability(alike - 1) < rare;
  }
}
