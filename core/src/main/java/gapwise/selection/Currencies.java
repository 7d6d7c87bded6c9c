package gapwise.selection;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.vocabulary.Outcome;
import java.util.Collection;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * In which currency all rows of a cost stand. Costs are never pooled across currencies: the one in
 * which most arms report is taken, of equals the first by its letters.
 *
 * @param chosen ISO 4217 letters; empty for outcomes that are no cost, or where no report says
 */
record Currencies(Optional<String> chosen) {

  static Currencies settle(Question question, Collection<ArmReports> arms) {
    Map<String, Integer> counts = new TreeMap<>();
    for (ArmReports arm : arms) {
      Stream.concat(arm.wholeArm().stream(), arm.subgroupsInRange().stream())
          .flatMap(candidate -> candidate.report().money().stream())
          .map(money -> money.currency().getCurrencyCode())
          .collect(Collectors.toSet())
          .forEach(letters -> counts.merge(letters, 1, Integer::sum));
    }
    boolean cost = question.outcome().kind() == Outcome.Kind.COST;
    return new Currencies(
        counts.entrySet().stream()
            .filter(entry -> cost)
            .max(
                Comparator.comparingInt((Map.Entry<String, Integer> entry) -> entry.getValue())
                    .thenComparing(Map.Entry::getKey, Comparator.reverseOrder()))
            .map(Map.Entry::getKey));
  }

  /**
   * Why a value cannot stand beside the others.
   *
   * @param report the report; empty for the list of patients
   */
  Optional<Reason> against(Optional<OutcomeReport> report) {
    Optional<String> letters =
        report.flatMap(OutcomeReport::money).map(money -> money.currency().getCurrencyCode());
    if (chosen.isEmpty() || letters.equals(chosen)) {
      return Optional.empty();
    }
    return Optional.of(new Incomparable.OtherCurrency(report, letters, chosen.get()));
  }
}
