package gapwise.decision.option;

import static gapwise.sentence.Sentences.say;

import gapwise.claim.Compared;
import gapwise.decision.certainty.ComparisonRules;
import gapwise.decision.certainty.Domain;
import gapwise.decision.certainty.InformationSize;
import gapwise.decision.certainty.Lowering;
import gapwise.decision.certainty.OneMethodRules;
import gapwise.decision.certainty.Rating;
import gapwise.decision.certainty.SeriesSeen;
import gapwise.decision.certainty.Start;
import gapwise.decision.situation.Fit;
import gapwise.decision.situation.Matches;
import gapwise.evidence.vocabulary.Design;
import gapwise.figure.value.Estimate;
import gapwise.selection.SelectedRow;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Proposes how certain a difference within studies is. Every study counts for its patients: a ratio
 * has no weights that could be told of a posterior.
 */
final class PairRating {
  /** Over 30 % fewer events is a large effect. */
  private static final double LARGE = 0.7;

  private PairRating() {}

  static Rating propose(
      OptionTable table,
      Column column,
      List<SelectedRow> rows,
      Compared compared,
      Estimate difference) {
    Map<String, List<SelectedRow>> studies = new LinkedHashMap<>();
    rows.forEach(
        row -> studies.computeIfAbsent(row.study().id(), id -> new ArrayList<>()).add(row));
    double all = Math.max(1, people(rows));
    List<SeriesSeen> seen = new ArrayList<>();
    List<Fit.Part> parts = new ArrayList<>();
    boolean randomised = true;
    for (List<SelectedRow> study : studies.values()) {
      double share = Math.min(1, people(study) / all);
      seen.add(
          new SeriesSeen(
              share,
              Conduct.of(study.get(0), column.outcome()),
              OptionalDouble.empty(),
              (int) people(study),
              false));
      parts.add(
          new Fit.Part(
              Matches.of(table.situation(), study.get(0)).worst(table.situation().mattering()),
              share));
      randomised &= study.get(0).study().design().equals(Optional.of(Design.RANDOMISED));
    }
    Fit fit = table.situation().mattering().isEmpty() ? Fit.NONE : Fit.of(parts);
    return new Rating(
        randomised ? Start.RANDOMISED : Start.COMPARED,
        List.of(
            OneMethodRules.bias(seen),
            new Lowering(Domain.INCONSISTENCY, 0, inconsistency(compared)),
            OneMethodRules.indirectness(fit, false),
            imprecision(column, compared, difference),
            new Lowering(Domain.UNPUBLISHED, 0, say("certainty.unpublished-open"))),
        0);
  }

  private static double people(List<SelectedRow> rows) {
    return rows.stream().mapToInt(row -> row.speaksOf().orElse(0)).sum();
  }

  private static String inconsistency(Compared compared) {
    return compared.studies() < 3
        ? say("certainty.inconsistency-open")
        : say("certainty.inconsistency-of-pair", Map.of("limits", compared.predicted()));
  }

  private static Lowering imprecision(Column column, Compared compared, Estimate difference) {
    OptionalDouble matters =
        column.matters().isPresent() ? column.matters() : column.aspect().usuallyMatters();
    int levels =
        matters.isPresent()
            ? ComparisonRules.imprecision(
                difference.limits(),
                matters.getAsDouble(),
                compared.isOfShares() && isLarge(compared),
                compared.patients(),
                2 * InformationSize.ofMeans(0.5))
            : difference.limits().lower() < 0 && difference.limits().upper() > 0 ? 1 : 0;
    return new Lowering(
        Domain.IMPRECISION,
        levels,
        say(
            "certainty.imprecision-of-pair",
            Map.of(
                "limits", Differing.limits(column, difference), "patients", compared.patients())));
  }

  private static boolean isLarge(Compared compared) {
    return compared.estimate() < LARGE || compared.estimate() > 1 / LARGE;
  }
}
