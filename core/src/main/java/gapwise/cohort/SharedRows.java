package gapwise.cohort;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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

  /** So many times what chance does on average is no chance any more. */
  private static final double BEYOND_CHANCE = 6;

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
    double chance = ALIKE_BY_CHANCE * (resultsToo ? RESULT_ALIKE_BY_CHANCE : 1);
    return new SharedRows(
        alike, first.size(), second.size(), chance * first.size() * second.size());
  }

  boolean areBeyondChance() {
    return alike >= LEAST && alike > BEYOND_CHANCE * byChance;
  }
}
