package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A single series tells people its own share with the exact interval of Clopper and Pearson: for 9
 * of 9 the lower limit is the ninth root of 0.025, for 0 of 9 the upper one is its rest. The others
 * by {@code binom.test} of base R 4.2.2 and SciPy: core/src/test/reference/edges.py.
 */
class OneFullSeriesTest {
  @ParameterizedTest
  @CsvSource({
    "random-effects, 9, 9, 1, 0.663732883120057, 1",
    "random-effects, 0, 9, 0, 0, 0.336267116879943",
    "common-effect, 9, 9, 1, 0.663732883120057, 1",
    "random-effects, 5, 9, 0.555555555555556, 0.212008506778868, 0.863004337734834",
    "random-effects, 14, 14, 1, 0.7683642383498834, 1",
    "common-effect, 0, 6, 0, 0, 0.45925812643990044",
    "exact-likelihood, 11, 12, 0.916666666666667, 0.6152038348490559, 0.9978924067681397",
    "exact-likelihood, 5, 9, 0.555555555555556, 0.212008506778868, 0.863004337734834"
  })
  void tellsItsOwnExactInterval(
      String model, int events, int total, double share, double lower, double upper) {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "events", events, "total", total);
    JsonNode result = Plans.result(Plans.on(rows, "model", model));
    for (String place : new String[] {"/summary/shown", "/studies/0/shown"}) {
      assertEquals(share, result.at(place + "/estimate").asDouble(), 1e-12, place);
      assertEquals(lower, result.at(place + "/lower").asDouble(), 1e-12, place);
      assertEquals(upper, result.at(place + "/upper").asDouble(), 1e-12, place);
    }
  }

  @Test
  void ofAGroupDoesSoToo() {
    ArrayNode rows = Plans.rows();
    int[][] series = {{9, 9}, {5, 9}, {7, 9}};
    for (int[] one : series) {
      Plans.row(rows, "events", one[0], "total", one[1], "kind", rows.isEmpty() ? 1 : 2);
    }
    JsonNode groups = Plans.result(Plans.on(rows, "subgroup", "kind")).get("subgroups");
    JsonNode alone =
        groups
            .valueStream()
            .filter(one -> one.get("studies").asInt() == 1)
            .findFirst()
            .orElseThrow();
    assertEquals(1, alone.at("/summary/shown/estimate").asDouble());
    assertEquals(Math.pow(0.025, 1.0 / 9), alone.at("/summary/shown/lower").asDouble(), 1e-12);
  }
}
