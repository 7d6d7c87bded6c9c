package gapwise.analysis.bayesian;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.Runner;
import gapwise.analysis.testing.Plans;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Seeded random data of any size and random priors: a posterior or a reason, and twice the same.
 */
class RandomBayesianPlansTest {
  private static final int PLANS_A_SEED = 20;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void aRandomPlanGivesAPosteriorOrAReasonAndTheSameAgain(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < PLANS_A_SEED; i++) {
      ObjectNode plan = plan(random);
      JsonNode result = Plans.result(plan);
      if (result.has("bayesian")) {
        JsonNode mean = result.at("/bayesian/mean");
        assertTrue(mean.get("lower").asDouble() < mean.get("upper").asDouble(), result::toString);
        double below = mean.get("probabilityBelowZero").asDouble();
        assertTrue(below >= 0 && below <= 1, result::toString);
      } else {
        assertTrue(result.get("warnings").size() > 0, () -> plan + " gave " + result);
      }
      JsonNode again = Runner.withoutEvidence().run(result.get("plan"), Optional.empty()).json();
      assertEquals(result.toString(), again.toString());
    }
  }

  private static ObjectNode plan(Random random) {
    ArrayNode rows = Plans.rows();
    boolean shares = random.nextBoolean();
    int k = 1 + random.nextInt(6);
    for (int i = 0; i < k; i++) {
      if (shares) {
        int n = 1 + random.nextInt(30);
        Plans.row(rows, "events", random.nextInt(n + 1), "total", n);
      } else {
        double size = Math.pow(10, random.nextInt(13) - 6);
        Plans.row(
            rows,
            "effect",
            size * random.nextInt(3),
            "variance",
            Math.pow(10, random.nextInt(25) - 12));
      }
    }
    ObjectNode plan =
        Plans.on(rows, "measure", shares ? "proportion" : "reported-effect", "model", "bayesian");
    ObjectNode prior = plan.putObject("prior");
    if (random.nextBoolean()) {
      prior
          .putObject("mean")
          .putArray("normal")
          .add(random.nextInt(5) - 2)
          .add(Math.pow(10, random.nextInt(7) - 3));
    }
    double scale = Math.pow(10, random.nextInt(9) - 4);
    switch (random.nextInt(5)) {
      case 0 -> prior.put("tau", "flat");
      case 1 -> prior.putObject("tau").put("halfNormal", scale);
      case 2 -> prior.putObject("tau").put("halfCauchy", scale);
      case 3 -> prior.putObject("tau").putArray("uniform").add(0).add(scale);
      default -> prior.putObject("tau").putArray("uniform").add(scale).add(3 * scale);
    }
    if (random.nextInt(3) == 0) {
      plan.put("level", new double[] {0.01, 0.5, 0.999999}[random.nextInt(3)]);
    }
    plan.putArray("probabilities").add(JsonNodeFactory.instance.objectNode().put("above", 0.9));
    plan.putArray("priorSensitivity").add("flat");
    return plan;
  }
}
