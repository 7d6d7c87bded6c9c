package gapwise.cohort;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.BoneCount;
import gapwise.evidence.EventCount;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * The numbers that a paper prints of one group.
 *
 * @param counts how many of the group, by what was counted
 * @param amounts means, medians and ranges, by what was measured, in thousandths
 */
record PrintedNumbers(Map<String, Integer> counts, Map<String, Long> amounts) {
  /** So many numbers of two groups agree by chance hardly ever, if none differs. */
  static final int MANY = 5;

  PrintedNumbers {
    counts = Map.copyOf(counts);
    amounts = Map.copyOf(amounts);
  }

  static PrintedNumbers of(Study study, Arm arm) {
    Baseline own = arm.baseline();
    Map<String, Integer> counts = new TreeMap<>();
    Map<String, Long> amounts = new TreeMap<>();
    own.patients().ifPresent(n -> counts.put("patients", n));
    own.limbs().ifPresent(n -> counts.put("limbs", n));
    own.male().ifPresent(count -> put(counts, "male", count));
    own.infected().ifPresent(count -> put(counts, "infected", count));
    own.smokers().ifPresent(count -> put(counts, "smokers", count));
    own.diabetics().ifPresent(count -> put(counts, "diabetics", count));
    for (BoneCount bone : own.bones()) {
      bone.count().ifPresent(n -> counts.put(bone.bone().code(), n));
    }
    own.age().ifPresent(summary -> put(amounts, "age", summary));
    own.followUp().ifPresent(summary -> put(amounts, "follow-up", summary));
    own.defect()
        .flatMap(defect -> defect.centimetres())
        .ifPresent(summary -> put(amounts, "length", summary));
    for (OutcomeReport report : study.outcomes()) {
      boolean whole =
          report.scope() instanceof Scope.OneArm one
              && one.arm().equals(arm.id())
              && report.subgroup().isEmpty();
      if (whole && report.value() instanceof ReportedValue.Events events) {
        put(counts, "of " + report.outcome().code(), events.count());
      } else if (whole && report.value() instanceof ReportedValue.Quantity quantity) {
        put(amounts, "of " + report.outcome().code(), quantity.summary());
      }
    }
    return new PrintedNumbers(counts, amounts);
  }

  private static void put(Map<String, Integer> counts, String name, EventCount count) {
    count.events().ifPresent(n -> counts.put(name, n));
  }

  private static void put(Map<String, Long> amounts, String name, QuantitySummary summary) {
    put(amounts, name + " mean", summary.mean());
    put(amounts, name + " median", summary.median());
    put(amounts, name + " deviation", summary.standardDeviation());
    put(amounts, name + " lowest", summary.minimum());
    put(amounts, name + " highest", summary.maximum());
  }

  private static void put(Map<String, Long> amounts, String name, OptionalDouble value) {
    value.ifPresent(number -> amounts.put(name, Math.round(number * 1000)));
  }

  /** How many numbers both give, and give alike. */
  int agreeing(PrintedNumbers other) {
    return agreeing(counts, other.counts) + agreeing(amounts, other.amounts);
  }

  private static <V> int agreeing(Map<String, V> one, Map<String, V> two) {
    int agreeing = 0;
    for (Map.Entry<String, V> number : one.entrySet()) {
      agreeing += number.getValue().equals(two.get(number.getKey())) ? 1 : 0;
    }
    return agreeing;
  }

  /** How many numbers both give, and give otherwise. */
  int differing(PrintedNumbers other) {
    return differing(counts, other.counts) + differing(amounts, other.amounts);
  }

  private static <V> int differing(Map<String, V> one, Map<String, V> two) {
    int differing = 0;
    for (Map.Entry<String, V> number : one.entrySet()) {
      V other = two.get(number.getKey());
      differing += other == null || other.equals(number.getValue()) ? 0 : 1;
    }
    return differing;
  }

  /** Whether many numbers agree and none differs; one may where twice as many agree. */
  boolean areThoseOf(PrintedNumbers other) {
    int agreeing = agreeing(other);
    int differing = differing(other);
    return agreeing >= MANY && (differing == 0 || differing == 1 && agreeing >= 2 * MANY);
  }

  /** How many counts both give. */
  int commonCounts(PrintedNumbers other) {
    return (int) counts.keySet().stream().filter(other.counts::containsKey).count();
  }

  /** Whether no count that both give is larger here, and one is smaller. */
  boolean fitInto(PrintedNumbers whole) {
    boolean smaller = false;
    for (Map.Entry<String, Integer> count : counts.entrySet()) {
      Integer all = whole.counts.get(count.getKey());
      if (all != null && count.getValue() > all) {
        return false;
      }
      smaller |= all != null && count.getValue() < all;
    }
    return smaller;
  }
}
