package gapwise.analysis.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Networks;
import gapwise.analysis.testing.Plans;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Comparisons of a network along the length of the defect. Values by whole matrices in NumPy and
 * SciPy on invented studies: core/src/test/reference/network_regression.py.
 */
class NetworkRegressionTest {
  /** Study, length, and treatment, events and total of each arm. */
  private static final List<String> STUDIES =
      List.of(
          "A 3 frame 6 40 nail 22 42",
          "B 4 frame 7 35 nail 5 34",
          "C 5.5 frame 9 51 nail 20 49",
          "D 8 frame 5 30 nail 21 31",
          "E 9.5 frame 4 35 nail 9 33",
          "F 2.5 frame 8 40 plate 9 42",
          "G 6 frame 10 44 plate 25 45",
          "H 7 frame 6 38 plate 16 40",
          "I 10 frame 5 29 plate 22 28",
          "J 4.5 nail 12 50 plate 21 51",
          "K 9 nail 14 44 plate 13 40",
          "L 6.5 frame 7 36 nail 13 38 plate 9 37",
          "M 3.5 frame 9 30 nail 7 30",
          "N 7.5 nail 11 35 plate 16 36 frame 8 33");

  private static ArrayNode rows(List<String> studies) {
    ArrayNode rows = Plans.rows();
    for (String study : studies) {
      String[] words = study.split(" ");
      for (int i = 2; i < words.length; i += 3) {
        ObjectNode row = rows.addObject().put("study", words[0]).put("treatment", words[i]);
        row.put("length", Double.parseDouble(words[1]));
        row.put("events", Integer.parseInt(words[i + 1]));
        row.put("total", Integer.parseInt(words[i + 2]));
      }
    }
    return rows;
  }

  private static ObjectNode plan(ArrayNode rows, String... fields) {
    ObjectNode plan = Networks.arms(rows, "odds-ratio", fields).put("reference", "frame");
    plan.putArray("moderators").add("length");
    return plan;
  }

  private static JsonNode regression(ObjectNode plan) {
    return Plans.result(plan).at("/network/regression");
  }

  @ParameterizedTest
  @CsvSource({
    "restricted-maximum-likelihood, 0.28179743337683677, 0.21734453345288396, 0.09787125111539594,"
        + " 0.044759537041604985, 0.42878251673138434, 1.5646919019923273, 0.32707641744933297",
    "maximum-likelihood, 0.1667902265160936, 0.21382345174885914, 0.08862752931819326,"
        + " 0.03133631717261355, 0.40529158818762095, 1.5625371512185486, 0.2945880759963352",
    "dersimonian-laird, 0.2812250270514617, 0.21733025996461797, 0.09782748868980816,"
        + " 0.04468976237653698, 0.42867370027054774, 1.5646815534115102, 0.3269231744173134"
  })
  void slopeAndEffectsAreThoseOfWholeMatrices(
      String estimator,
      double tauSquared,
      double slope,
      double error,
      double pValue,
      double upper,
      double plateAtEight,
      double plateError) {
    ObjectNode plan = plan(rows(STUDIES), "betweenStudyVariance", estimator);
    plan.putArray("predictions").addObject().put("length", 8);
    JsonNode found = regression(plan);
    assertEquals(tauSquared, found.at("/heterogeneity/tauSquared").asDouble(), 1e-6);
    assertEquals(25.760757429162513, found.at("/heterogeneity/q").asDouble(), 1e-9);
    assertEquals(13, found.at("/heterogeneity/degreesOfFreedom").asInt());
    assertEquals(slope, found.at("/slope/estimate").asDouble(), 1e-6);
    assertEquals(error, found.at("/slope/standardError").asDouble(), 1e-6);
    assertEquals(pValue, found.at("/slope/pValue").asDouble(), 1e-6);
    assertEquals(upper, found.at("/slope/upper").asDouble(), 1e-6);
    assertEquals(13, found.at("/slope/degreesOfFreedom").asInt());
    JsonNode plate = found.at("/predictions/1/effects/1");
    assertEquals("plate", plate.at("/treatment").asText());
    assertEquals(plateAtEight, plate.at("/estimate").asDouble(), 1e-6);
    assertEquals(plateError, plate.at("/standardError").asDouble(), 1e-6);
    assertEquals(Math.exp(plateAtEight), plate.at("/shown/estimate").asDouble(), 1e-5);
  }

  @Test
  void effectsAreToldAtTheMeanOverStudiesUnlessACentreIsNamed() {
    JsonNode atMean = regression(plan(rows(STUDIES)));
    assertEquals(86.5 / 14, atMean.at("/predictions/0/at/length").asDouble(), 1e-12);
    assertEquals(
        0.9564283575975874, atMean.at("/predictions/0/effects/0/estimate").asDouble(), 1e-6);
    ObjectNode centred = plan(rows(STUDIES));
    centred.putArray("moderators").addObject().put("column", "length").put("centre", 2);
    JsonNode atTwo = regression(centred);
    assertEquals(
        0.04823869995517935, atTwo.at("/predictions/0/effects/0/estimate").asDouble(), 1e-6);
    assertEquals(
        0.4574484339655634, atTwo.at("/predictions/0/effects/0/standardError").asDouble(), 1e-6);
    assertTrue(atTwo.at("/predictions/0/outsideData").asBoolean());
    assertFalse(atMean.at("/predictions/0/outsideData").asBoolean());
    assertEquals(
        atMean.at("/slope/estimate").asDouble(), atTwo.at("/slope/estimate").asDouble(), 1e-12);
  }

  @Test
  void aCommonEffectHasNormalLimits() {
    JsonNode found = regression(plan(rows(STUDIES), "networkEffects", "common"));
    assertEquals(0.20440551403485752, found.at("/slope/estimate").asDouble(), 1e-9);
    assertEquals(0.0051289878752503225, found.at("/slope/pValue").asDouble(), 1e-9);
    assertTrue(found.at("/slope/degreesOfFreedom").isMissingNode());
  }

  /** Two treatments: meta-regression, whose numbers are held by published data. */
  @Test
  void twoTreatmentsGiveMetaRegression() {
    ArrayNode contrasts = Plans.rows();
    ArrayNode effects = Plans.rows();
    for (int i = 0; i < 12; i++) {
      double effect = Math.sin(3 * i) + 0.1 * i;
      ObjectNode row = effects.addObject().put("study", "S" + i).put("length", i % 5 + 0.5 * i);
      row.put("effect", effect).put("standardError", 0.3 + 0.02 * i);
      contrasts.add(row.deepCopy().put("treatment", "nail").put("against", "frame"));
    }
    ObjectNode network = Networks.contrasts(contrasts, "reference", "frame");
    network.putArray("moderators").add("length");
    network.put("moderatorTest", "normal");
    ObjectNode pairs = Plans.on(effects, "measure", "reported-effect", "moderatorTest", "normal");
    pairs.putArray("moderators").add("length");
    JsonNode slope = regression(network).at("/slope");
    JsonNode expected = Plans.result(pairs).at("/regression/coefficients/1");
    for (String field : List.of("estimate", "standardError", "pValue", "lower", "upper")) {
      assertEquals(expected.at("/" + field).asDouble(), slope.at("/" + field).asDouble(), 1e-9);
    }
  }

  @Test
  void comparisonsOfOtherTreatmentsCarryNoSlope() {
    ArrayNode rows = rows(STUDIES);
    for (JsonNode row : rows) {
      boolean others = List.of("J", "K").contains(row.get("study").asText());
      if (others) {
        ((ObjectNode) row).put("length", 40);
      }
    }
    JsonNode moved = regression(plan(rows));
    JsonNode found = regression(plan(rows(STUDIES)));
    assertEquals(
        found.at("/slope/estimate").asDouble(), moved.at("/slope/estimate").asDouble(), 1e-9);
  }

  @Test
  void anArmMayTellTheLengthOfItsOwnPatients() {
    ArrayNode rows = rows(STUDIES);
    ((ObjectNode) rows.get(0)).put("length", 2);
    ((ObjectNode) rows.get(1)).put("length", 4);
    JsonNode found = regression(plan(rows));
    assertEquals(0.21734453345288396, found.at("/slope/estimate").asDouble(), 1e-6);
  }

  @Test
  void aStudyWithoutTheLengthIsListedAndStaysInTheNetwork() {
    ArrayNode rows = rows(STUDIES);
    Networks.counts(rows, "Z", "frame", 6, 30, "nail", 9, 30);
    JsonNode result = Plans.result(plan(rows));
    assertEquals(14, result.at("/network/regression/studies").asInt());
    assertEquals(12, result.at("/network/regression/studiesWithReference").asInt());
    assertEquals(
        0.21734453345288396, result.at("/network/regression/slope/estimate").asDouble(), 1e-6);
    assertTrue(
        result
            .get("warnings")
            .valueStream()
            .anyMatch(
                one ->
                    one.get("code").asText().equals("missing-value")
                        && one.path("study").asText().equals("Z")));
    ArrayNode without = rows(STUDIES);
    Networks.counts(without, "Z", "frame", 6, 30, "nail", 9, 30);
    ObjectNode plain = Networks.arms(without, "odds-ratio").put("reference", "frame");
    assertEquals(Plans.result(plain).at("/network/effects"), result.at("/network/effects"));
  }

  @Test
  void underTenStudiesOfTheReferenceNoSlopeIsTold() {
    JsonNode result = Plans.result(plan(rows(STUDIES.subList(0, 11))));
    assertTrue(result.at("/network/regression").isMissingNode());
    assertEquals(List.of("too-few-studies-for-moderator"), codes(result, "too-few"));
  }

  @Test
  void whereLengthsOfAComparisonAreAlikeNoSlopeIsTold() {
    Map<String, Double> lengths = Map.of("nail", 4.0, "plate", 8.0);
    ArrayNode rows = rows(STUDIES.subList(0, 11));
    for (String extra : List.of("P", "Q")) {
      Networks.counts(rows, extra, "frame", 7, 30, "nail", 9, 31);
    }
    for (int i = 0; i < rows.size(); i += 2) {
      double length = lengths.get(rows.get(i + 1).get("treatment").asText());
      ((ObjectNode) rows.get(i)).put("length", length);
      ((ObjectNode) rows.get(i + 1)).put("length", length);
    }
    JsonNode result = Plans.result(plan(rows));
    assertTrue(result.at("/network/regression").isMissingNode());
    assertEquals(List.of("moderator-does-not-vary"), codes(result, "moderator-"));
  }

  private static List<String> codes(JsonNode result, String start) {
    return result
        .get("warnings")
        .valueStream()
        .map(one -> one.get("code").asText())
        .filter(code -> code.startsWith(start))
        .toList();
  }

  @Test
  void whatANetworkCannotTakeIsRefusedByName() {
    ObjectNode two = plan(rows(STUDIES));
    two.putArray("moderators").add("length").add("year");
    assertEquals(List.of("moderators part-not-for-model"), Plans.problems(two));
    ObjectNode unknown = plan(rows(STUDIES));
    unknown.putArray("moderators").add("depth");
    assertEquals(List.of("moderators unknown-column"), Plans.problems(unknown));
    ObjectNode other = plan(rows(STUDIES));
    other.putArray("predictions").addObject().put("depth", 3);
    assertEquals(List.of("predictions[0] part-not-for-model"), Plans.problems(other));
    ObjectNode text = plan(rows(STUDIES));
    text.putArray("predictions").addObject().put("length", "long");
    assertEquals(List.of("predictions[0].length not-a-number"), Plans.problems(text));
    assertEquals(
        List.of("moderatorTest interval-not-for-model"),
        Plans.problems(plan(rows(STUDIES), "moderatorTest", "t-clusters")));
    assertEquals(
        List.of("interval interval-not-for-model"),
        Plans.problems(plan(rows(STUDIES), "interval", "hartung-knapp")));
    ArrayNode words = rows(STUDIES);
    ((ObjectNode) words.get(0)).put("length", "short");
    assertEquals(List.of("row 1, column length not-a-number"), Plans.problems(plan(words)));
  }
}
