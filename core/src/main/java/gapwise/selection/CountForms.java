package gapwise.selection;

import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.Reason.PassedOver.For;
import java.util.Collection;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * In which form all rows of a count for each patient stand: that which was asked for, else the one
 * in which more arms can be pooled, of equals the one that more arms report, then events among
 * patients, whose variance needs no spread. A mean without a spread cannot be pooled.
 *
 * @param chosen empty for outcomes that are no such count, or where no arm has a usable value
 * @param arms how many arms report each form
 */
record CountForms(Optional<CountedAs> chosen, Map<CountedAs, Integer> arms) {
  CountForms {
    arms = Map.copyOf(arms);
  }

  static CountForms settle(Question question, Collection<ArmReports> arms) {
    Map<CountedAs, Integer> reporting = new EnumMap<>(CountedAs.class);
    Map<CountedAs, Integer> poolable = new EnumMap<>(CountedAs.class);
    if (question.outcome().kind() == Outcome.Kind.COUNT) {
      for (ArmReports arm : arms) {
        for (CountedAs form : CountedAs.values()) {
          if (arm.wholeArm().stream().anyMatch(one -> is(one, form))) {
            reporting.merge(form, 1, Integer::sum);
          }
          if (arm.wholeArm().stream()
              .anyMatch(one -> is(one, form) && canBePooled(one, question.conversions()))) {
            poolable.merge(form, 1, Integer::sum);
          }
        }
      }
    }
    return new CountForms(
        reporting.isEmpty()
            ? Optional.empty()
            : Optional.of(question.countedAs().orElseGet(() -> more(poolable, reporting))),
        reporting);
  }

  private static CountedAs more(
      Map<CountedAs, Integer> poolable, Map<CountedAs, Integer> reporting) {
    int first = lead(poolable);
    int second = first == 0 ? lead(reporting) : first;
    return second > 0 ? CountedAs.MEANS : CountedAs.EVENTS;
  }

  /** By how many arms means lead. */
  private static int lead(Map<CountedAs, Integer> counts) {
    return counts.getOrDefault(CountedAs.MEANS, 0) - counts.getOrDefault(CountedAs.EVENTS, 0);
  }

  private static boolean is(Candidate candidate, CountedAs form) {
    return CountedAs.of(candidate.value()).equals(Optional.of(form));
  }

  private static boolean canBePooled(Candidate candidate, Conversions conversions) {
    return !(candidate.value() instanceof ReportedValue.Quantity quantity)
        || SpreadBasis.of(quantity.summary(), conversions) != SpreadBasis.NONE;
  }

  /** How many arms report a form. */
  int arms(CountedAs form) {
    return arms.getOrDefault(form, 0);
  }

  /** Why a value cannot stand beside the others. */
  Optional<Reason> against(Candidate candidate) {
    Optional<CountedAs> own = CountedAs.of(candidate.value());
    return chosen
        .flatMap(taken -> own.filter(form -> form != taken))
        .map(
            form ->
                new Reason.PassedOver(
                    candidate.report(),
                    form == CountedAs.MEANS ? For.EVENTS_TAKEN : For.MEANS_TAKEN));
  }

  /** Patients described one by one in the form that is taken; their sum is exact in either. */
  PatientSum inForm(PatientSum patients) {
    return chosen.equals(Optional.of(CountedAs.EVENTS)) ? patients.asEvents() : patients;
  }
}
