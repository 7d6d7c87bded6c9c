package gapwise.analysis.network;

import static gapwise.analysis.testing.Networks.contrast;
import static gapwise.analysis.testing.Networks.counts;
import static gapwise.analysis.testing.Networks.effect;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Networks;
import gapwise.analysis.testing.Plans;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What a network comes to, against sums done elsewhere and against what must hold for any data. */
class NetworkTest {
  private static final List<String> ESTIMATORS =
      List.of("restricted-maximum-likelihood", "maximum-likelihood", "dersimonian-laird");

  /**
   * Networks.eightStudies. Generalised least squares on the full covariance matrix of all contrasts
   * in numpy 1.24, tau at the root of the score r'WDWr - tr(PD) by scipy 1.10 (brentq); base R 4.2,
   * maximising the likelihood by optimise, agrees to the 7 digits that such a search has.
   */
  @ParameterizedTest
  @CsvSource({
    "restricted-maximum-likelihood, 0.8263187822021647, -12.056022105431339, 0.103669149363825,"
        + " 0.628078195220544, 0.388458826711791, 0.531751548014136",
    "maximum-likelihood, 0.5093620741583011, -12.657758391508052, 0.108176726765389,"
        + " 0.531790232354663, 0.395805185219201, 0.454867208980874"
  })
  void aNetworkWithStudiesOfThreeArmsAgreesWithTheWholeCovarianceMatrixElsewhere(
      String estimator,
      double tauSquared,
      double logLikelihood,
      double graft,
      double graftError,
      double nail,
      double nailError) {
    JsonNode result =
        Plans.result(
            Networks.arms(
                Networks.eightStudies(), "odds-ratio", "betweenStudyVariance", estimator));
    assertEquals(tauSquared, result.at("/network/heterogeneity/tauSquared").asDouble(), 1e-12);
    assertEquals(logLikelihood, result.at("/fit/logLikelihood").asDouble(), 1e-12);
    assertEquals(graft, effect(result, "graft", "frame").get("estimate").asDouble(), 1e-12);
    assertEquals(
        graftError, effect(result, "graft", "frame").get("standardError").asDouble(), 1e-12);
    assertEquals(nail, effect(result, "nail", "frame").get("estimate").asDouble(), 1e-12);
    assertEquals(nailError, effect(result, "nail", "frame").get("standardError").asDouble(), 1e-12);
  }

  /** The same studies and sums as above; the interaction model has a column for each design. */
  @Test
  void differencesWithinAndBetweenDesignsAgreeWithTheInteractionModelElsewhere() {
    JsonNode network =
        Plans.result(
                Networks.arms(
                    Networks.eightStudies(),
                    "odds-ratio",
                    "betweenStudyVariance",
                    "dersimonian-laird"))
            .get("network");
    assertEquals(28.86737118971414, network.at("/inconsistency/total/q").asDouble(), 1e-10);
    assertEquals(
        0.00015296916890970697, network.at("/inconsistency/total/pValue").asDouble(), 1e-13);
    assertEquals(0.9144007053186729, network.at("/heterogeneity/tauSquared").asDouble(), 1e-12);
    assertEquals(
        10.143671823288269, network.at("/inconsistency/withinDesigns/q").asDouble(), 1e-10);
    assertEquals(2, network.at("/inconsistency/withinDesigns/degreesOfFreedom").asInt());
    assertEquals(
        18.723699366425873, network.at("/inconsistency/betweenDesigns/q").asDouble(), 1e-10);
    assertEquals(5, network.at("/inconsistency/betweenDesigns/degreesOfFreedom").asInt());
    JsonNode allowing = network.get("designByTreatment");
    assertEquals(1.1974659550651319, allowing.get("tauSquared").asDouble(), 1e-12);
    assertEquals(3.315764808854979, allowing.get("chiSquared").asDouble(), 1e-10);
    assertEquals(0.6514289760340223, allowing.get("pValue").asDouble(), 1e-10);
    assertEquals(5, allowing.get("degreesOfFreedom").asInt());
  }

  record Case(String estimator, long seed) {}

  static Stream<Case> cases() {
    return ESTIMATORS.stream()
        .flatMap(e -> IntStream.range(1, 6).mapToObj(seed -> new Case(e, seed)));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void twoTreatmentsAreThePairwiseSynthesis(Case example) {
    Random random = new Random(example.seed());
    for (String measure : List.of("odds-ratio", "risk-ratio", "risk-difference")) {
      ArrayNode arms = Plans.rows();
      ArrayNode pairs = Plans.rows();
      for (int i = 0; i < 7; i++) {
        int n1 = 8 + random.nextInt(50);
        int n2 = 8 + random.nextInt(50);
        int a = 1 + random.nextInt(n1 - 1);
        int c = measure.equals("risk-difference") ? 1 + random.nextInt(n2 - 1) : i % 4;
        counts(arms, "S" + i, "frame", a, n1, "nail", c, n2);
        Plans.row(
            pairs,
            "intervention.events",
            a,
            "intervention.total",
            n1,
            "comparator.events",
            c,
            "comparator.total",
            n2);
      }
      samePairwise(Networks.arms(arms, measure), Plans.on(pairs, "measure", measure), example);
    }
  }

  @ParameterizedTest
  @MethodSource("cases")
  void twoTreatmentsWithMeansOrRatesAreThePairwiseSynthesis(Case example) {
    Random random = new Random(example.seed());
    for (String measure :
        List.of("mean-difference", "standardised-mean-difference", "ratio-of-means")) {
      ArrayNode arms = Plans.rows();
      ArrayNode pairs = Plans.rows();
      for (int i = 0; i < 6; i++) {
        List<Object> pair = new ArrayList<>();
        for (String group : List.of("intervention", "comparator")) {
          double n = 3 + random.nextInt(40);
          double mean = 6 + 2 * random.nextDouble();
          double sd = 1 + random.nextDouble();
          String treatment = group.equals("intervention") ? "frame" : "nail";
          Networks.arm(arms, "S" + i, treatment, "n", n, "mean", mean, "sd", sd);
          pair.addAll(List.of(group + ".n", n, group + ".mean", mean, group + ".sd", sd));
        }
        Plans.row(pairs, pair.toArray());
      }
      samePairwise(Networks.arms(arms, measure), Plans.on(pairs, "measure", measure), example);
    }
    ArrayNode arms = Plans.rows();
    ArrayNode pairs = Plans.rows();
    for (int i = 0; i < 5; i++) {
      int one = 1 + random.nextInt(30);
      int other = random.nextInt(3);
      Networks.arm(arms, "S" + i, "frame", "events", one, "personTime", 90 + i);
      Networks.arm(arms, "S" + i, "nail", "events", other, "personTime", 70);
      Plans.row(
          pairs,
          "intervention.events",
          one,
          "intervention.personTime",
          90 + i,
          "comparator.events",
          other,
          "comparator.personTime",
          70);
    }
    samePairwise(
        Networks.arms(arms, "incidence-rate-ratio"),
        Plans.on(pairs, "measure", "incidence-rate-ratio"),
        example);
  }

  private static void samePairwise(ObjectNode network, ObjectNode pairwise, Case example) {
    network.put("betweenStudyVariance", example.estimator());
    pairwise.put("betweenStudyVariance", example.estimator()).put("interval", "normal");
    JsonNode whole = Plans.result(network);
    JsonNode pooled = Plans.result(pairwise);
    JsonNode one = effect(whole, "frame", "nail");
    for (String field : List.of("estimate", "standardError", "lower", "upper", "shown")) {
      near(pooled.at("/summary/" + field), one.get(field));
    }
    for (String field :
        List.of(
            "q",
            "pValue",
            "tauSquared",
            "tauSquaredLower",
            "tauSquaredUpper",
            "iSquaredPercent",
            "iSquaredPercentFromQ",
            "hSquared")) {
      near(pooled.at("/heterogeneity/" + field), whole.at("/network/heterogeneity/" + field));
    }
    near(pooled.at("/fit/logLikelihood"), whole.at("/fit/logLikelihood"));
    for (String field : List.of("studies", "arms", "participants", "events")) {
      assertEquals(pooled.at("/data/" + field), whole.at("/data/" + field), field);
    }
  }

  /** Equal to a billionth: the rounding of some thousand operations, and searches end at 1e-15. */
  private static void near(JsonNode expected, JsonNode found) {
    if (expected.isObject()) {
      found.fieldNames().forEachRemaining(f -> near(expected.path(f), found.get(f)));
      return;
    }
    assertEquals(expected.isMissingNode(), found.isMissingNode());
    double value = expected.asDouble();
    assertEquals(value, found.asDouble(), 1e-9 * Math.max(1, Math.abs(value)));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void neitherTheOrderOfRowsNorTheReferenceChangesAnEffect(Case example) {
    ArrayNode rows = Networks.eightStudies();
    JsonNode before =
        Plans.result(
            Networks.arms(rows, "odds-ratio", "betweenStudyVariance", example.estimator()));
    List<JsonNode> shuffled = new ArrayList<>();
    rows.forEach(shuffled::add);
    Collections.shuffle(shuffled, new Random(example.seed()));
    ArrayNode other = Plans.rows();
    other.addAll(shuffled);
    JsonNode after =
        Plans.result(
            Networks.arms(
                other,
                "odds-ratio",
                "betweenStudyVariance",
                example.estimator(),
                "reference",
                "plate"));
    assertEquals("plate", after.at("/network/treatments/0").asText());
    for (JsonNode one : before.at("/network/effects")) {
      near(one, effect(after, one.get("treatment").asText(), one.get("against").asText()));
    }
    near(
        before.at("/network/inconsistency/betweenDesigns"),
        after.at("/network/inconsistency/betweenDesigns"));
    near(before.at("/network/heterogeneity"), after.at("/network/heterogeneity"));
  }

  @Test
  void contrastsOfAStudyOfThreeArmsSayTheSameAsItsArms() {
    ArrayNode arms = Networks.eightStudies();
    ArrayNode contrasts = Plans.rows();
    List<JsonNode> all = new ArrayList<>();
    arms.forEach(all::add);
    for (JsonNode one : all) {
      for (JsonNode other : all) {
        boolean pair =
            one.get("study").equals(other.get("study"))
                && one.get("treatment").asText().compareTo(other.get("treatment").asText()) > 0;
        if (pair) {
          contrast(
              contrasts,
              one.get("study").asText(),
              one.get("treatment").asText(),
              other.get("treatment").asText(),
              logOdds(one) - logOdds(other),
              Math.sqrt(variance(one) + variance(other)));
        }
      }
    }
    JsonNode fromArms = Plans.result(Networks.arms(arms, "odds-ratio"));
    JsonNode fromContrasts =
        Plans.result(Networks.contrasts(contrasts, "reportedAs", "analysis-scale"));
    for (JsonNode one : fromArms.at("/network/effects")) {
      // contrasts on the analysis scale are shown as they are, arms as odds ratios
      one.findParents("shown").forEach(parent -> ((ObjectNode) parent).remove("shown"));
      near(effect(fromContrasts, one.get("treatment").asText(), one.get("against").asText()), one);
    }
    assertEquals(18, fromContrasts.at("/data/arms").asInt());
  }

  private static double logOdds(JsonNode arm) {
    double events = arm.get("events").asDouble();
    return Math.log(events / (arm.get("total").asDouble() - events));
  }

  private static double variance(JsonNode arm) {
    double events = arm.get("events").asDouble();
    return 1 / events + 1 / (arm.get("total").asDouble() - events);
  }

  @Test
  void takingTheDirectPartOutOfTheNetworkGivesTheIndirectPart() {
    JsonNode one =
        effect(Plans.result(Networks.arms(Networks.eightStudies(), "odds-ratio")), "nail", "graft");
    double whole = weight(one);
    double direct = weight(one.get("direct"));
    double indirect = weight(one.get("indirect"));
    assertEquals(whole, direct + indirect, 1e-10 * whole);
    assertEquals(
        whole * one.get("estimate").asDouble(),
        direct * one.at("/direct/estimate").asDouble()
            + indirect * one.at("/indirect/estimate").asDouble(),
        1e-10);
    assertFalse(one.get("disagreement").has("method"), "two-arm studies alone hold the pair");
  }

  private static double weight(JsonNode comparison) {
    return Math.pow(comparison.get("standardError").asDouble(), -2);
  }

  /**
   * The difference of two standardised arms against the first has the variance that the two arms
   * have by themselves, 1/n2 + 1/n3 + g^2/(2N): the covariance is that of one scale for the study.
   */
  @Test
  void standardisedArmsHaveOneScaleAStudy() {
    ArrayNode rows = Plans.rows();
    Networks.arm(rows, "A", "frame", "n", 14, "mean", 0.0, "sd", 1.1);
    Networks.arm(rows, "A", "nail", "n", 20, "mean", 0.8, "sd", 0.9);
    Networks.arm(rows, "A", "plate", "n", 17, "mean", 1.5, "sd", 1.0);
    JsonNode one =
        effect(Plans.result(Networks.arms(rows, "standardised-mean-difference")), "plate", "nail");
    double g = one.get("estimate").asDouble();
    double pooled = Math.sqrt((13 * 1.21 + 19 * 0.81 + 16) / 48);
    // J on 48 degrees of freedom: 1 - 3/(4 * 48 - 1) to four digits (Hedges 1981).
    assertEquals(0.7 / pooled * (1 - 3 / 191.0), g, 1e-4);
    assertEquals(
        1 / 20.0 + 1 / 17.0 + g * g / (2 * 51),
        Math.pow(one.get("standardError").asDouble(), 2),
        1e-12);
  }
}
