package gapwise.analysis.network;

import static gapwise.analysis.testing.Networks.contrast;
import static gapwise.analysis.testing.Networks.counts;
import static gapwise.analysis.testing.Networks.effect;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import gapwise.analysis.testing.Networks;
import gapwise.analysis.testing.Plans;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the rows of a network may not be, and what is told when something cannot be had. */
class NetworkFormTest {
  @Test
  void aTreatmentTwiceInAStudyIsAProblemAtItsRow() {
    ArrayNode arms = Plans.rows();
    counts(arms, "A", "frame", 3, 10, "nail", 4, 10, "frame", 5, 10);
    assertEquals(
        List.of("row 3, column treatment treatment-twice"),
        Plans.problems(Networks.arms(arms, "odds-ratio")));
    ArrayNode contrasts = Plans.rows();
    contrast(contrasts, "A", "frame", "frame", 0.1, 0.2);
    assertEquals(
        List.of("row 1, column against treatment-twice"),
        Plans.problems(Networks.contrasts(contrasts)));
  }

  @Test
  void contrastsOfOneStudyMustBeAllThereOnceAndAddUp() {
    ArrayNode missing = Plans.rows();
    contrast(missing, "A", "b", "a", 0.1, 0.2);
    contrast(missing, "A", "c", "a", 0.3, 0.2);
    assertEquals(List.of("study A contrast-missing"), Plans.problems(Networks.contrasts(missing)));
    ArrayNode wrong = missing.deepCopy();
    contrast(wrong, "A", "c", "b", -0.2, 0.2);
    assertEquals(
        List.of("study A inconsistent-contrasts"), Plans.problems(Networks.contrasts(wrong)));
    ArrayNode impossible = missing.deepCopy();
    contrast(impossible, "A", "c", "b", 0.2, 0.5);
    assertEquals(
        List.of("study A inconsistent-contrasts"),
        Plans.problems(Networks.contrasts(impossible)),
        "standard errors of 0.2, 0.2 and 0.5 are no triangle");
    ArrayNode twice = missing.deepCopy();
    contrast(twice, "A", "a", "b", -0.1, 0.2);
    assertEquals(List.of("study A contrast-twice"), Plans.problems(Networks.contrasts(twice)));
    ArrayNode rounded = missing.deepCopy();
    contrast(rounded, "A", "c", "b", 0.21, 0.2);
    JsonNode result = Plans.result(Networks.contrasts(rounded));
    assertTrue(Plans.warnings(result).contains("single-study"));
    // 0.1, 0.3 and 0.21 miss each other by 0.01, which is spread over the three by thirds.
    assertEquals(0.3 + 0.01 / 3, effect(result, "c", "a").get("estimate").asDouble(), 1e-12);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "measure | proportion | model model-not-for-measure",
        "measure | mean | model model-not-for-measure",
        "betweenStudyVariance | paule-mandel | betweenStudyVariance estimator-not-for-model",
        "subgroup | study | subgroup part-not-for-model",
        "cumulativeBy | study | cumulativeBy part-not-for-model",
        "interval | hartung-knapp | interval interval-not-for-model",
        "reference | membrane | reference unknown-treatment",
        "better | best | better unknown-value"
      })
  void whatANetworkDoesNotHaveIsRefusedAtItsField(String field, String value, String problem) {
    assertEquals(
        List.of(problem),
        Plans.problems(Networks.arms(Networks.eightStudies(), "odds-ratio").put(field, value)));
  }

  @Test
  void rowsOfTheWrongKindAreToldByTheirColumns() {
    ArrayNode contrasts = Plans.rows();
    contrast(contrasts, "A", "frame", "nail", 0.1, 0.2);
    assertTrue(
        Plans.problems(Networks.arms(contrasts, "odds-ratio"))
            .contains("columns.events missing-column"));
    assertTrue(
        Plans.problems(Networks.contrasts(Networks.eightStudies()))
            .contains("columns.against missing-column"));
  }

  @Test
  void singleArmsAndArmsWithoutAValueAreLeftOutAndTheRestStays() {
    ArrayNode rows = Networks.eightStudies();
    counts(rows, "I", "frame", 3, 10);
    rows.addObject().put("study", "J").put("treatment", "nail").put("total", 20);
    counts(rows, "J", "frame", 4, 20);
    rows.addObject().put("treatment", "nail").put("events", 2).put("total", 20);
    JsonNode result = Plans.result(Networks.arms(rows, "odds-ratio"));
    JsonNode without = Plans.result(Networks.arms(Networks.eightStudies(), "odds-ratio"));
    assertEquals(without.at("/network"), result.at("/network"));
    assertEquals(
        List.of("missing-value", "missing-value", "study-left-out", "study-left-out"),
        Plans.warnings(result).stream()
            .filter(code -> !Plans.warnings(without).contains(code))
            .toList());
    assertEquals(22, result.get("studies").size());
    assertTrue(result.at("/studies/18/effect").isMissingNode());
  }

  @Test
  void aStudyOfWhichAContrastLacksItsErrorIsLeftOut() {
    ArrayNode rows = Plans.rows();
    contrast(rows, "A", "b", "a", 0.1, 0.2);
    contrast(rows, "B", "b", "a", 0.1, 0.2);
    contrast(rows, "B", "c", "a", 0.1, 0.2);
    rows.addObject().put("study", "B").put("treatment", "c").put("against", "b").put("effect", 0);
    JsonNode result = Plans.result(Networks.contrasts(rows));
    assertTrue(Plans.warnings(result).containsAll(List.of("missing-value", "study-left-out")));
    assertEquals(2, result.at("/network/treatments").size());
  }

  @Test
  void piecesAreNamedAndEffectsWithinThemStay() {
    ArrayNode rows = Plans.rows();
    contrast(rows, "A", "frame", "nail", 0.08, 0.2);
    contrast(rows, "B", "graft", "flap", -0.04, 0.25);
    JsonNode result = Plans.result(Networks.contrasts(rows));
    assertEquals(
        "[[\"flap\",\"graft\"],[\"frame\",\"nail\"]]", result.at("/network/pieces").toString());
    assertEquals(4, result.at("/network/effects").size());
    String told = result.get("warnings").toString();
    assertTrue(told.contains("flap, graft | frame, nail"), told);
    assertFalse(result.at("/network").has("ranking"));
  }

  @Test
  void aTreeOfSingleStudiesHasEffectsAndSaysThatNothingCanBeSaidOfDifferences() {
    ArrayNode rows = Plans.rows();
    contrast(rows, "A", "frame", "nail", 0.5, 0.3);
    contrast(rows, "B", "nail", "plate", 0.2, 0.4);
    JsonNode result = Plans.result(Networks.contrasts(rows));
    assertEquals(0.7, effect(result, "frame", "plate").get("estimate").asDouble(), 1e-15);
    assertEquals(0.5, effect(result, "frame", "plate").get("standardError").asDouble(), 1e-15);
    assertTrue(Plans.warnings(result).containsAll(List.of("too-few-studies", "no-closed-loop")));
    assertTrue(result.at("/network/heterogeneity/tauSquared").isMissingNode());
    assertTrue(result.at("/network/inconsistency/total/pValue").isMissingNode());
    assertTrue(result.at("/network/heterogeneity/iSquaredPercentFromQ").isMissingNode());
  }

  @Test
  void studiesWithoutAnyEventLeaveNothingAndAreTold() {
    ArrayNode rows = Plans.rows();
    counts(rows, "A", "frame", 0, 10, "nail", 0, 12, "plate", 0, 9);
    counts(rows, "B", "frame", 0, 20, "nail", 0, 15);
    JsonNode none = Plans.result(Networks.arms(rows, "odds-ratio"));
    assertFalse(none.has("network"));
    assertTrue(Plans.warnings(none).contains("no-events"));
    JsonNode difference = Plans.result(Networks.arms(rows, "risk-difference"));
    assertFalse(difference.has("network"));
    assertTrue(Plans.warnings(difference).contains("zero-variance"));
  }

  @Test
  void aReferenceWhoseStudiesAreAllLeftOutIsReplacedAndTold() {
    ArrayNode rows = Networks.eightStudies();
    counts(rows, "Z", "membrane", 0, 9, "flap", 0, 9);
    JsonNode result = Plans.result(Networks.arms(rows, "odds-ratio", "reference", "membrane"));
    assertEquals("frame", result.at("/network/reference").asText());
    assertTrue(Plans.warnings(result).contains("reference-left-out"));
  }

  @Test
  void moreTreatmentsThanCanBeMeantAreAProblem() {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 101; i++) {
      contrast(rows, "S" + i, "t" + i, "t", 0.1, 0.2);
    }
    assertEquals(
        List.of("columns.treatment too-many-treatments"), Plans.problems(Networks.contrasts(rows)));
  }
}
