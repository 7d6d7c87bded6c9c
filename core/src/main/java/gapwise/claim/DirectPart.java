package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.bayesian.BayesianResult;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.figure.value.Limits;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Studies that hold both methods of a claim, pooled. */
final class DirectPart {
  static final String HEADING = say("claim.direct-heading");

  /** More studies are read in the drawing. */
  /** As many studies tell more of how they differ than is assumed of it (our choice). */
  private static final int FEWEST_WITHOUT_ASSUMPTION = 5;

  private static final int MOST_COUNTS = 12;

  private final Runner runner;
  private final Claim claim;
  private final Effect effect;

  DirectPart(Runner runner, Claim claim, Effect effect) {
    this.runner = runner;
    this.claim = claim;
    this.effect = effect;
  }

  Part of(ArmTable table) {
    ArrayNode rows = table.pairs(claim.a().method(), claim.b().method());
    if (rows.isEmpty()) {
      return Part.none(
          HEADING,
          say(
              "claim.no-direct-comparison",
              Map.of("first", claim.a().name(), "second", claim.b().name())));
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
        say(
            "claim.plan-direct",
            Map.of(
                "outcome",
                claim.outcome().label(),
                "first",
                claim.a().name(),
                "second",
                claim.b().name())));
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
          say(
              "claim.direct",
              Map.of(
                  "studies",
                  told.studies(),
                  "patients",
                  told.patients(),
                  "told",
                  told.words(claim))));
      sentences.add(open(told));
      if (told.studies() == 1) {
        sentences.add(say("claim.one-study"));
      } else if (told.studies() < FEWEST_WITHOUT_ASSUMPTION) {
        assumed(result).ifPresent(sentences::add);
      }
    } else {
      sentences.add(say("claim.direct-without-value", Map.of("studies", found)));
      result.warnings().stream()
          .filter(warning -> warning.study().isEmpty())
          .map(Result.Warning::sentence)
          .forEach(sentences::add);
    }
    if (entered.size() < found) {
      sentences.add(say(notEntered(), Map.of("out", found - entered.size(), "studies", found)));
    }
    counts(rows).ifPresent(sentences::add);
    return new Part(HEADING, sentences, compared, Optional.of(plan), Optional.of(result));
  }

  /** How the ratio moves with what is assumed of how far studies differ, half of it or twice. */
  private Optional<String> assumed(Result result) {
    List<String> others =
        SynthesisResult.of(result)
            .bayesian()
            .flatMap(BayesianResult::priorSensitivity)
            .orElse(List.of())
            .stream()
            .flatMap(other -> other.shown().stream())
            .map(shown -> effect.withLimits(claim.outcome(), shown))
            .toList();
    return others.size() == 2
        ? Optional.of(say("claim.assumed", Map.of("half", others.get(0), "twice", others.get(1))))
        : Optional.empty();
  }

  private String notEntered() {
    return switch (effect) {
      case ODDS_RATIO -> "claim.direct-all-or-none";
      case RATE_RATIO -> "claim.direct-without-events";
      case RATIO_OF_MEANS, MEAN_DIFFERENCE -> "claim.direct-without-sd";
    };
  }

  private static String open(Compared told) {
    return switch (told.lean()) {
      case OPEN -> say("claim.interval-open");
      case FIRST_MORE -> say("claim.interval-more");
      case FIRST_LESS -> say("claim.interval-less");
    };
  }

  /** What single studies counted, first method against second; empty for means and many studies. */
  private Optional<String> counts(ArrayNode rows) {
    if (effect != Effect.ODDS_RATIO || rows.size() > MOST_COUNTS) {
      return Optional.empty();
    }
    List<String> told = new ArrayList<>();
    for (JsonNode row : rows) {
      told.add(
          say(
              "claim.counts-of-study",
              Map.of(
                  "study",
                  row.path("study").asText(),
                  "events",
                  row.at("/intervention.events").asInt(),
                  "total",
                  row.at("/intervention.total").asInt(),
                  "otherEvents",
                  row.at("/comparator.events").asInt(),
                  "otherTotal",
                  row.at("/comparator.total").asInt())));
    }
    return Optional.of(say("claim.counts", Map.of("studies", String.join("; ", told))));
  }

  /** The studies that were pooled; an exact likelihood takes empty and full groups too. */
  static Set<String> entered(Result result, Effect effect) {
    Set<String> leftOut =
        result.warnings().stream()
            .filter(warning -> warning.code().equals("study-left-out"))
            .flatMap(warning -> warning.studyId().stream())
            .collect(Collectors.toSet());
    return SynthesisResult.of(result).studies().stream()
        .filter(study -> effect.isFromCounts() || study.variance().isPresent())
        .flatMap(study -> study.studyId().stream())
        .filter(id -> !leftOut.contains(id))
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  private static double patients(JsonNode row, String group) {
    return Stream.of("total", "n", "personTime")
        .map(role -> row.path(group + role))
        .filter(JsonNode::isNumber)
        .mapToDouble(JsonNode::asDouble)
        .findFirst()
        .orElse(0);
  }

  private Compared compared(Result.Shown shown, Set<String> entered, ArrayNode rows) {
    double patients = 0;
    for (JsonNode row : rows) {
      if (entered.contains(row.path(DataTable.STUDY_ID).asText())) {
        for (String group : List.of("intervention.", "comparator.")) {
          patients += patients(row, group);
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
