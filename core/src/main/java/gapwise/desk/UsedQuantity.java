package gapwise.desk;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.rows.EnteringMean;
import gapwise.effect.ArmMean;
import gapwise.evidence.Arm;
import gapwise.evidence.Definition;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Standing;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import gapwise.selection.Reason;
import gapwise.selection.SelectedRow;
import gapwise.selection.SpreadBasis;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** The mean and standard deviation that a synthesis would take of one printed quantity. */
final class UsedQuantity {
  private UsedQuantity() {}

  /** Empty where the mean and the standard deviation are printed, with the number of patients. */
  static Optional<Noted> of(
      Study study, DraftRow row, OutcomeReport report, QuantitySummary printed) {
    Optional<Arm> arm = UsedBySynthesis.arm(study, row);
    if (arm.isEmpty()) {
      return Optional.empty();
    }
    Optional<String> never = never(report, printed);
    if (never.isPresent()) {
      return Optional.of(
          UsedBySynthesis.noted(row, fields(), List.of(never.get(), UsedBySynthesis.asPrinted())));
    }
    SelectedRow selected = selected(study, arm.get(), report);
    EnteringMean entering = EnteringMean.of(selected, report.outcome(), printed);
    boolean plain =
        entering.basis() == SpreadBasis.PRINTED
            && entering.mean().filter(mean -> mean.n() > 1 && !mean.fromMedian()).isPresent()
            && entering.codes().isEmpty();
    return plain
        ? Optional.empty()
        : Optional.of(
            UsedBySynthesis.noted(
                row, fields(entering, row), sentences(report, printed, entering)));
  }

  private static SelectedRow selected(Study study, Arm arm, OutcomeReport report) {
    return new SelectedRow(
        study,
        arm,
        study.id(),
        report.value(),
        SelectedRow.Basis.REPORTED,
        Optional.empty(),
        Optional.of(report),
        Definition.of(study, Optional.of(report), report.outcome()),
        report.clock(),
        Optional.empty(),
        0);
  }

  /** Why no synthesis takes it, whatever stands beside it. */
  private static Optional<String> never(OutcomeReport report, QuantitySummary printed) {
    Outcome outcome = report.outcome();
    if (outcome.kind() == Outcome.Kind.PHASE) {
      return Optional.of(Reason.Plain.PHASE.sentence());
    }
    if (report.scope() instanceof Scope.Comparison) {
      return Optional.of(Reason.Plain.COMPARISON.sentence());
    }
    if (report.standing() != Standing.COUNTS) {
      return Optional.of(
          (report.standing() == Standing.SUPERSEDED
                  ? Reason.Plain.SUPERSEDED
                  : Reason.Plain.ALTERNATIVE)
              .sentence());
    }
    Optional<Unit> compared =
        outcome.unit().filter(unit -> unit.dimension() != printed.unit().dimension());
    if (compared.isPresent()) {
      return Optional.of(
          say(
              "selection.unit-does-not-fit",
              Map.of("printed", printed.unit().symbol(), "needed", compared.get().symbol())));
    }
    return printed.centre().isEmpty() ? Optional.of(say("desk.used-no-centre")) : Optional.empty();
  }

  private static Stream<String> fields() {
    return Stream.of(
        "mean", "median", "sd", "se", "ci_lower", "q1", "min", "max", "q3", "spread_unstated");
  }

  /** The field that the standard deviation, or the mean, comes from stands first. */
  private static Stream<String> fields(EnteringMean entering, DraftRow row) {
    Stream<String> first =
        entering.mean().isEmpty() || entering.mean().get().fromMedian()
            ? Stream.of("median")
            : switch (entering.basis()) {
              case STANDARD_ERROR -> Stream.of("se");
              case LIMITS -> Stream.of("ci_lower", "ci_upper");
              case QUARTILES -> Stream.of("q1", "q3");
              case RANGE -> Stream.of("min", "max");
              case QUARTILES_AND_RANGE -> Stream.of("q1", "q3", "min", "max");
              case TEST -> Stream.of(row.text("test_t").isEmpty() ? "test_p" : "test_t");
              case PRINTED, NONE -> Stream.of("mean");
            };
    return Stream.concat(first, fields()).distinct();
  }

  private static List<String> sentences(
      OutcomeReport report, QuantitySummary printed, EnteringMean entering) {
    List<String> all = new ArrayList<>();
    if (entering.mean().isEmpty()) {
      all.add(
          entering.codes().contains("median-alone")
              ? say("desk.used-median-alone")
              : say("desk.used-without-n"));
      all.add(UsedBySynthesis.asPrinted());
      return all;
    }
    ArmMean mean = entering.mean().get();
    Unit unit = report.outcome().unit().orElse(printed.unit());
    all.add(taken(mean, unit));
    source(mean, entering).ifPresent(all::add);
    if (mean.n() < 2) {
      all.add(say("desk.used-one-patient"));
    } else if (mean.sd().isEmpty()) {
      all.add(
          entering.codes().contains("spread-not-stated")
              ? say("desk.used-spread-unstated")
              : say("desk.used-no-spread"));
    }
    if (entering.codes().contains("patients-of-the-arm-taken")) {
      all.add(say("desk.used-patients-of-arm", Map.of("patients", (int) mean.n())));
    }
    if (entering.looksSkewed()) {
      all.add(say(mean.fromMedian() ? "desk.used-skewed-median" : "desk.used-skewed-mean"));
    }
    return all;
  }

  private static String taken(ArmMean mean, Unit unit) {
    Quantity quantity = Quantity.mean(unit.symbol());
    String centre = Shown.value(quantity, mean.mean().orElseThrow());
    return mean.sd().isEmpty()
        ? say("desk.used-mean", Map.of("mean", centre, "unit", unit.symbol()))
        : say(
            "desk.used-mean-and-sd",
            Map.of(
                "mean",
                centre,
                "sd",
                Shown.value(quantity, mean.sd().getAsDouble()),
                "unit",
                unit.symbol()));
  }

  /** From what the numbers come, and by whose method; empty where both are printed. */
  private static Optional<String> source(ArmMean mean, EnteringMean entering) {
    Map<String, Integer> patients = Map.of("patients", (int) mean.n());
    if (entering.fromMedian().isPresent()) {
      boolean printed = entering.basis() == SpreadBasis.PRINTED;
      return Optional.of(
          switch (entering.fromMedian().get()) {
            case QUARTILES ->
                say(printed ? "desk.used-luo-quartiles" : "desk.used-median-quartiles", patients);
            case RANGE -> say(printed ? "desk.used-luo-range" : "desk.used-median-range", patients);
            case BOTH -> say(printed ? "desk.used-luo-both" : "desk.used-median-both", patients);
          });
    }
    if (mean.sd().isEmpty()) {
      return Optional.empty();
    }
    return switch (entering.basis()) {
      case STANDARD_ERROR -> Optional.of(say("desk.used-standard-error", patients));
      case LIMITS -> Optional.of(say("desk.used-limits", patients));
      case QUARTILES -> Optional.of(say("desk.used-quartiles", patients));
      case RANGE -> Optional.of(say("desk.used-range", patients));
      case QUARTILES_AND_RANGE -> Optional.of(say("desk.used-quartiles-and-range", patients));
      case TEST ->
          Optional.of(
              entering.codes().contains("converted-from-t-statistic")
                  ? say("desk.used-t")
                  : say("desk.used-p"));
      case PRINTED, NONE -> Optional.empty();
    };
  }
}
