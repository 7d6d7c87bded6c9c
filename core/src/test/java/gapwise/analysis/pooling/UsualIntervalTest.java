package gapwise.analysis.pooling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;

/** Intervals of a pooled mean: what belongs to them whichever is asked. */
class UsualIntervalTest {
  private static ArrayNode apart() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 0, "variance", 0.0001);
    Plans.row(rows, "effect", 0.01, "variance", 0.0001);
    Plans.row(rows, "effect", 3, "variance", 4);
    Plans.row(rows, "effect", 4, "variance", 4);
    Plans.row(rows, "effect", 5, "variance", 4);
    return rows;
  }

  @Test
  void iSquaredHasTheLimitsOfTauSquaredBesideTheSameTypicalVariance() {
    // Higgins and Thompson 2002: I squared = t/(t + s); 19 effects would be the published case,
    // here
    // s follows from the estimate, and both limits from those of tau squared.
    JsonNode result = Plans.ofEffects(apart(), "betweenStudyVariance", "paule-mandel");
    JsonNode h = result.get("heterogeneity");
    double share = h.get("iSquaredPercent").asDouble() / 100;
    double typical = h.get("tauSquared").asDouble() * (1 - share) / share;
    for (String end : new String[] {"Lower", "Upper"}) {
      double limit = h.get("tauSquared" + end).asDouble();
      assertEquals(
          100 * limit / (limit + typical), h.get("iSquaredPercent" + end).asDouble(), 1e-9, end);
    }
    assertTrue(Plans.warnings(result).contains("i-squared-of-few-studies"));
  }

  @Test
  void oneStudyKeepsItsOwnEffectWhateverIntervalIsAsked() {
    ArrayNode one = Plans.rows();
    Plans.row(one, "effect", 0.4, "variance", 0.09);
    for (String interval :
        new String[] {
          "hartung-knapp", "hartung-knapp-never-narrower", "normal", "profile-likelihood"
        }) {
      JsonNode result = Plans.ofEffects(one.deepCopy(), "interval", interval);
      assertEquals(0.4, result.at("/summary/estimate").asDouble(), interval);
      assertEquals(
          0.4 - 0.3 * 1.959963984540054, result.at("/summary/lower").asDouble(), 1e-14, interval);
      assertTrue(Plans.warnings(result).contains("single-study"), interval);
    }
  }
}
