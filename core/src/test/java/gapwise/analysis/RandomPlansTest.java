package gapwise.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.RandomRows;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Seeded random plans on random rows with zeros, blanks and single patients: each gives a result or
 * problems with words, never an exception; a result's plan asks the same again.
 */
class RandomPlansTest {
  private static final int PLANS_A_SEED = 60;

  private static final List<String> MEASURES =
      List.of(
          "proportion",
          "odds-ratio",
          "risk-ratio",
          "risk-difference",
          "mean",
          "mean-difference",
          "standardised-mean-difference",
          "ratio-of-means",
          "incidence-rate",
          "incidence-rate-ratio",
          "reported-effect");

  static LongStream seeds() {
    return LongStream.range(0, 25);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void aRandomPlanGivesAResultOrProblemsAndNeverAnException(long seed) {
    Random random = new Random(seed);
    Runner runner = Runner.withoutEvidence();
    for (int i = 0; i < PLANS_A_SEED; i++) {
      ObjectNode plan = plan(random);
      PlanOutcome outcome = runner.run(plan, Optional.empty());
      if (outcome instanceof PlanOutcome.Wrong wrong) {
        assertFalse(wrong.problems().isEmpty());
        continue;
      }
      JsonNode json = outcome.json();
      if (!json.has("summary")) {
        assertTrue(json.get("warnings").size() > 0, () -> plan + " gave " + json);
      }
      JsonNode again = runner.run(json.get("plan"), Optional.empty()).json();
      assertEquals(json.toString(), again.toString(), plan::toString);
    }
  }

  private static ObjectNode plan(Random random) {
    ObjectNode plan = JsonNodeFactory.instance.objectNode();
    String measure = pick(random, MEASURES);
    plan.put("measure", measure);
    ArrayNode rows = plan.putObject("source").putArray("rows");
    int k = random.nextInt(7);
    for (int i = 0; i <= k; i++) {
      RandomRows.fill(random, rows.addObject().put("study", "S" + i), measure);
    }
    maybe(random, plan, "scale", scales(measure));
    maybe(random, plan, "model", List.of("random-effects", "common-effect", "exact-likelihood"));
    boolean common = plan.path("model").asText().equals("common-effect");
    maybe(random, plan, "likelihood", List.of("conditional", "unconditional"));
    maybe(random, plan, "armSpread", List.of("larger-with-intervention", "equal"));
    if (common) {
      maybe(random, plan, "pooling", List.of("inverse-variance", "mantel-haenszel", "peto"));
    } else if (!plan.path("model").asText().equals("exact-likelihood")) {
      maybe(
          random,
          plan,
          "interval",
          List.of("hartung-knapp", "hartung-knapp-never-narrower", "normal", "profile-likelihood"));
    }
    maybe(
        random,
        plan,
        "betweenStudyVariance",
        List.of("maximum-likelihood", "dersimonian-laird", "sidik-jonkman", "hedges"));
    maybe(random, plan, "predictionInterval", List.of("t-k-minus-1", "normal"));
    maybe(random, plan, "predictionStandardError", List.of("hartung-knapp"));
    maybe(random, plan, "tauSquaredInterval", List.of("profile-likelihood"));
    maybe(random, plan, "reportedAs", List.of("ratio"));
    maybe(random, plan, "subgroup", List.of("group"));
    maybe(random, plan, "subgroupVariance", List.of("common"));
    maybe(random, plan, "cumulativeBy", List.of("study", "group"));
    if (random.nextBoolean()) {
      plan.putObject("continuityCorrection")
          .put("tables", pick(random, List.of("none", "every", "every-if-one-is-empty")));
      plan.put("uninformativeStudies", pick(random, List.of("keep", "leave-out")));
    }
    if (random.nextBoolean()) {
      plan.put("level", new double[] {0.01, 0.5, 0.999999}[random.nextInt(3)]);
    }
    if (random.nextInt(3) == 0) {
      ArrayNode tests = plan.putArray("smallStudyEffects").add("egger").add("begg").add("harbord");
      tests.add("trim-and-fill");
      plan.putObject("funnel");
    }
    if (random.nextBoolean()) {
      plan.put("quadraturePoints", 1 + random.nextInt(40));
      plan.put("influence", true);
      plan.put("backTransformN", 1 + random.nextInt(9));
    }
    if (random.nextInt(3) == 0) {
      plan.putArray("places").add(0.5).add(1e-300).add(0.99);
    }
    return plan;
  }

  private static List<String> scales(String measure) {
    return switch (measure) {
      case "proportion" -> List.of("logit", "double-arcsine", "arcsine", "log", "raw");
      case "mean" -> List.of("raw", "log");
      case "incidence-rate" -> List.of("log", "square-root");
      default -> List.of();
    };
  }

  private static void maybe(Random random, ObjectNode plan, String field, List<String> values) {
    if (!values.isEmpty() && random.nextBoolean()) {
      plan.put(field, pick(random, values));
    }
  }

  private static String pick(Random random, List<String> values) {
    return values.get(random.nextInt(values.size()));
  }
}
