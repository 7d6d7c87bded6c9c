package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Several studies are kept, of which one alone says anything of the ratio. */
class OneTellingStudyTest {
  @ParameterizedTest
  @CsvSource({
    "incidence-rate-ratio, personTime, conditional",
    "odds-ratio, total, conditional",
    "odds-ratio, total, unconditional"
  })
  void standsAloneBesideStudiesWithoutEvents(String measure, String total, String likelihood) {
    ArrayNode rows = Plans.rows();
    int[][] counts = {{0, 31, 0, 27}, {7, 23, 12, 34}, {0, 16, 0, 19}};
    for (int[] one : counts) {
      Plans.row(
          rows,
          "intervention.events",
          one[0],
          "intervention." + total,
          one[1],
          "comparator.events",
          one[2],
          "comparator." + total,
          one[3]);
    }
    JsonNode result =
        Plans.result(
            Plans.on(rows, "measure", measure, "model", "exact-likelihood")
                .put("likelihood", likelihood)
                .put("uninformativeStudies", "keep")
                .put("influence", true));
    double ratio =
        measure.equals("odds-ratio")
            ? Math.log(7.0 / 16 / (12.0 / 22))
            : Math.log(7.0 / 23 / (12.0 / 34));
    assertEquals(ratio, result.at("/summary/estimate").asDouble(), 1e-9);
    assertTrue(Plans.warnings(result).contains("single-study"));
    assertFalse(result.at("/studies/0").has("weightPercent"));
  }
}
