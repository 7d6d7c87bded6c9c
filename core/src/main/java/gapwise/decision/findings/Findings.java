package gapwise.decision.findings;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.MethodLine;
import gapwise.decision.certainty.Certainty;
import gapwise.decision.certainty.Settled;
import gapwise.decision.option.Cell;
import gapwise.decision.option.Column;
import gapwise.decision.option.Differing;
import gapwise.decision.option.Option;
import gapwise.decision.option.OptionTable;
import gapwise.decision.option.PairWithin;
import gapwise.decision.situation.Fit;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Shown;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A summary of findings.
 *
 * @param table the table that it sums up
 * @param all outcome by outcome: each method in the order of the table, then what compares them
 */
public record Findings(OptionTable table, List<Finding> all) {
  public Findings {
    Objects.requireNonNull(table, "table");
    all = List.copyOf(all);
  }

  /** Of a table and the comparisons within studies of its methods. */
  public static Findings of(OptionTable table, List<PairWithin> within) {
    List<Finding> all = new ArrayList<>();
    for (Column column : table.columns()) {
      table.options().forEach(option -> all.add(of(table, column, option)));
      within.stream()
          .filter(pair -> pair.column().equals(column))
          .map(Findings::of)
          .forEach(all::add);
    }
    return new Findings(table, all);
  }

  /** Those of one outcome. */
  public List<Finding> of(Column column) {
    return all.stream().filter(one -> one.column().equals(column)).toList();
  }

  private static Finding of(OptionTable table, Column column, Option option) {
    String method = option.method().shortLabel();
    if (!(table.cell(option, column) instanceof Cell.Known known)) {
      return new Finding(
          Finding.Kind.ONE_METHOD,
          column,
          method,
          Optional.empty(),
          table.cell(option, column).whyNot(),
          "",
          "",
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          "");
    }
    Optional<Estimate> value = value(known.line().finding());
    return new Finding(
        Finding.Kind.ONE_METHOD,
        column,
        method,
        value,
        value
            .map(one -> Shown.estimate(column.measure(), one))
            .orElseGet(() -> say("decision.no-average")),
        known.line().counted(),
        known.line().series(),
        newCentre(known.line().finding()),
        Optional.of(known.fit()).filter(fit -> !fit.equals(Fit.NONE)),
        Optional.of(known.certainty().rating()),
        settled(known.certainty()));
  }

  private static Finding of(PairWithin pair) {
    return new Finding(
        Finding.Kind.WITHIN_STUDIES,
        pair.column(),
        say(
            "findings.less",
            Map.of("first", pair.first().shortLabel(), "second", pair.second().shortLabel())),
        pair.difference(),
        pair.difference()
            .map(one -> Differing.words(pair.column(), one))
            .orElse(pair.part().sentences().get(0)),
        pair.compared()
            .map(one -> say("findings.patients", Map.of("patients", one.patients())))
            .orElse(""),
        say("decision.studies", Map.of("studies", pair.studies())),
        Optional.empty(),
        Optional.empty(),
        pair.rating(),
        "");
  }

  private static Optional<Estimate> value(MethodLine.Finding finding) {
    if (finding instanceof MethodLine.Average average) {
      return Optional.of(average.value());
    }
    return finding instanceof MethodLine.OneSeries one
        ? Optional.of(one.value())
        : Optional.empty();
  }

  private static Optional<Limits> newCentre(MethodLine.Finding finding) {
    return finding instanceof MethodLine.Average average ? average.newCentre() : Optional.empty();
  }

  private static String settled(Certainty certainty) {
    if (certainty.settled().isEmpty()) {
      return "";
    }
    Settled one = certainty.settled().get();
    return say(
        certainty.isOutdated() ? "decision.settled-before" : "decision.settled",
        Map.of(
            "who", one.who(),
            "when", LocalDate.ofInstant(one.when(), ZoneOffset.UTC).toString(),
            "reason", one.judgement().reason()));
  }
}
