package gapwise.claim;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.figure.value.Limits;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Studies that hold both methods of a claim, pooled. */
final class DirectPart {
  static final String HEADING = "Direct comparisons";

  /** More studies are read in the drawing. */
  private static final int MOST_COUNTS = 12;

  private final Runner runner;
  private final Claim claim;
  private final Effect effect;

  DirectPart(Runner runner, Claim claim) {
    this.runner = runner;
    this.claim = claim;
    this.effect = Effect.of(claim.outcome());
  }

  Part of(ArmTable table) {
    ArrayNode rows = table.pairs(claim.a().method(), claim.b().method());
    if (rows.isEmpty()) {
      return Part.none(
          HEADING,
          "No study here treated some patients by "
              + claim.a().name()
              + " and others by "
              + claim.b().name()
              + " and reports this outcome of both. There is no direct comparison.");
    }
    ObjectNode plan = plan(rows);
    PlanOutcome outcome = runner.run(plan, Optional.empty());
    if (outcome instanceof PlanOutcome.Wrong wrong) {
      return new Part(
          HEADING,
          wrong.problems().stream().map(Problem::message).toList(),
          Optional.empty(),
          Optional.of(plan),
          Optional.empty());
    }
    return told(plan, ((PlanOutcome.Done) outcome).result(), rows);
  }

  private ObjectNode plan(ArrayNode rows) {
    ObjectNode plan = JsonNodeFactory.instance.objectNode();
    plan.put(
        "title",
        claim.outcome().label() + ": " + claim.a().name() + " against " + claim.b().name());
    plan.putObject("source").set("rows", rows);
    effect.pool(plan);
    return plan;
  }

  private Part told(ObjectNode plan, Result result, ArrayNode rows) {
    int found = rows.size();
    Set<String> entered = entered(result, effect);
    List<String> sentences = new ArrayList<>();
    Optional<Compared> compared =
        SynthesisResult.of(result)
            .summary()
            .map(summary -> compared(summary.shown(), entered, rows));
    if (compared.isPresent()) {
      Compared told = compared.get();
      sentences.add(
          (told.studies() == 1 ? "One study" : told.studies() + " studies")
              + " with "
              + told.patients()
              + " patients or limbs: "
              + told.words(claim)
              + ".");
      sentences.add(open(told));
      if (told.studies() == 1) {
        sentences.add("One study says nothing of how results differ elsewhere.");
      }
    } else {
      sentences.add(
          (found == 1 ? "One study reports" : found + " studies report")
              + " this outcome of both methods, yet no common value can be given.");
      result.warnings().stream()
          .filter(warning -> warning.study().isEmpty())
          .map(warning -> sentence(warning.message()))
          .forEach(sentences::add);
    }
    if (entered.size() < found) {
      sentences.add(
          found
              - entered.size()
              + " of "
              + found
              + " could not be pooled: "
              + (effect == Effect.ODDS_RATIO
                  ? "everybody or nobody had the event in both groups."
                  : "no standard deviation is reported of both groups, nor what one could be had"
                      + " from, or a mean is 0, of which no ratio can be taken."));
    }
    counts(rows).ifPresent(sentences::add);
    return new Part(HEADING, sentences, compared, Optional.of(plan), Optional.of(result));
  }

  private static String open(Compared told) {
    return switch (told.lean()) {
      case OPEN -> "The interval holds no difference, more and less alike: it is left open.";
      case FIRST_MORE -> "The whole interval lies on the side of more after the first method.";
      case FIRST_LESS -> "The whole interval lies on the side of less after the first method.";
    };
  }

  private static String sentence(String message) {
    String end = message.endsWith(".") ? "" : ".";
    return Character.toUpperCase(message.charAt(0)) + message.substring(1) + end;
  }

  /** What single studies counted, first method against second; empty for means and many studies. */
  private Optional<String> counts(ArrayNode rows) {
    if (effect != Effect.ODDS_RATIO || rows.size() > MOST_COUNTS) {
      return Optional.empty();
    }
    List<String> told = new ArrayList<>();
    for (JsonNode row : rows) {
      told.add(
          row.path("study").asText()
              + ": "
              + count(row, "intervention.")
              + " against "
              + count(row, "comparator."));
    }
    return Optional.of(String.join("; ", told) + ".");
  }

  private static String count(JsonNode row, String group) {
    return row.path(group + "events").asInt() + " of " + row.path(group + "total").asInt();
  }

  /** The studies that were pooled; an exact likelihood takes empty and full groups too. */
  static Set<String> entered(Result result, Effect effect) {
    Set<String> leftOut =
        result.warnings().stream()
            .filter(warning -> warning.code().equals("study-left-out"))
            .flatMap(warning -> warning.studyId().stream())
            .collect(Collectors.toSet());
    return SynthesisResult.of(result).studies().stream()
        .filter(study -> effect == Effect.ODDS_RATIO || study.variance().isPresent())
        .flatMap(study -> study.studyId().stream())
        .filter(id -> !leftOut.contains(id))
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  private Compared compared(Result.Shown shown, Set<String> entered, ArrayNode rows) {
    double patients = 0;
    for (JsonNode row : rows) {
      if (entered.contains(row.path(DataTable.STUDY_ID).asText())) {
        for (String group : List.of("intervention.", "comparator.")) {
          patients += row.path(group + "total").asDouble(row.path(group + "n").asDouble());
        }
      }
    }
    Optional<Limits> prediction =
        shown.predictionLower().isPresent() && shown.predictionUpper().isPresent()
            ? Optional.of(
                new Limits(
                    shown.predictionLower().getAsDouble(), shown.predictionUpper().getAsDouble()))
            : Optional.empty();
    return new Compared(
        effect,
        claim.outcome(),
        entered.size(),
        Math.round(patients),
        shown.estimate(),
        shown.lower(),
        shown.upper(),
        prediction);
  }
}
