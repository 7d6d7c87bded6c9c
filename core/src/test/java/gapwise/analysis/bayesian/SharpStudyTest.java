package gapwise.analysis.bayesian;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A posterior with one study that has next to no standard error. In the limit its true effect is
 * its own effect y2, so y2 ~ N(mean, tau^2), and with mean = y2 + tau z the density of tau and z is
 * prior(tau) N(y2 + tau z; 0, 16) N(z; 0, 1) prod N(y_i; y2 + tau z, s_i^2 + tau^2) over the other
 * studies. The values were computed outside the project from this, by Gauss-Legendre rules of 40
 * points on 22 panels of each of tau and z; nothing of the closed form in the code enters.
 */
class SharpStudyTest {
  private static final double MEAN = 7.876780361490314;
  private static final double MEAN_DEVIATION = 0.5135791348740772;
  private static final double TAU = 0.40485428739120394;
  private static final double TAU_DEVIATION = 0.3053927890963757;
  private static final double FURTHER_DEVIATION = 0.7217584619726188;
  private static final double STUDY_A = 7.899960687682993;

  private static JsonNode posterior(double error, int place) {
    double[] effects = {28, 8, -3, 7, -1, 1, 18, 12};
    double[] errors = {15, error, 16, 11, 9, 11, 10, 18};
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < effects.length; i++) {
      int at = (i + place) % effects.length;
      Plans.row(rows, "effect", effects[at], "standardError", errors[at]);
    }
    ObjectNode plan = Plans.on(rows, "measure", "reported-effect", "model", "bayesian");
    plan.putObject("prior").putObject("mean").putArray("normal").add(0).add(4);
    return Plans.result(plan);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1e-6, 1e-9, 1e-16, 1e-20})
  void thePosteriorIsThatOfItsLimit(double error) {
    JsonNode told = posterior(error, 0).get("bayesian");
    assertEquals(MEAN, told.at("/mean/mean").asDouble(), 1e-9);
    assertEquals(MEAN_DEVIATION, told.at("/mean/sd").asDouble(), 1e-9);
    assertEquals(TAU, told.at("/tau/mean").asDouble(), 1e-9);
    assertEquals(TAU_DEVIATION, told.at("/tau/sd").asDouble(), 1e-9);
    assertEquals(FURTHER_DEVIATION, told.at("/predictive/sd").asDouble(), 1e-9);
    assertEquals(STUDY_A, told.at("/studies/0/mean").asDouble(), 1e-9);
    assertEquals(8, told.at("/studies/1/mean").asDouble(), 1e-9);
  }

  @Test
  void itDoesNotMatterWhereTheStudyStands() {
    for (int place = 0; place < 8; place++) {
      JsonNode told = posterior(1e-16, place).get("bayesian");
      assertEquals(MEAN, told.at("/mean/mean").asDouble(), 1e-9);
      assertEquals(TAU, told.at("/tau/mean").asDouble(), 1e-9);
    }
  }

  @Test
  void aPriorThatSaysMoreThanAnyStudyHoldsTheMean() {
    // In the limit the mean is known, 7, and only tau is left; y ~ N(7, s^2 + tau^2).
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 8, "standardError", 1e-16);
    Plans.row(rows, "effect", 5, "standardError", 2);
    ObjectNode plan = Plans.on(rows, "measure", "reported-effect", "model", "bayesian");
    plan.putObject("prior").putObject("mean").putArray("normal").add(7).add(1e-25);
    JsonNode told = Plans.result(plan).get("bayesian");
    assertEquals(7, told.at("/mean/mean").asDouble(), 1e-12);
    // Simpson's rule on prior(tau) N(1; 0, tau^2) N(-2; 0, 4 + tau^2), outside the code.
    assertEquals(tauOfKnownMean(), told.at("/tau/mean").asDouble(), 1e-6);
  }

  private static double tauOfKnownMean() {
    double mass = 0;
    double moment = 0;
    int steps = 20_000;
    for (int i = 1; i <= steps; i++) {
      double tau = 6.0 * i / steps;
      double t = tau * tau;
      double density =
          Math.exp(-t / 0.5 - 1 / (2 * t) - 4 / (2 * (4 + t))) / Math.sqrt(t * (4 + t));
      double weight = i == steps ? 1 : i % 2 == 0 ? 2 : 4;
      mass += weight * density;
      moment += weight * density * tau;
    }
    return moment / mass;
  }

  @Test
  void effectsThatNoSpreadCanReconcileAreRefusedAndNotGuessed() {
    ArrayNode rows = Plans.rows();
    for (double effect : new double[] {1e-9, 1e22, -3, 7}) {
      Plans.row(rows, "effect", effect, "standardError", 10);
    }
    ObjectNode plan = Plans.on(rows, "measure", "reported-effect", "model", "bayesian");
    JsonNode result = Plans.result(plan);
    assertTrue(Plans.warnings(result).contains("number-out-of-range"), result.toString());
    assertTrue(!result.has("bayesian") && !result.has("summary"), result.toString());
  }

  @Test
  void aPriorBeyondArithmeticIsRefused() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 1, "standardError", 1);
    Plans.row(rows, "effect", 2, "standardError", 1);
    ObjectNode narrow = Plans.on(rows, "measure", "reported-effect", "model", "bayesian");
    narrow.putObject("prior").putObject("mean").putArray("normal").add(0).add(1e-200);
    assertEquals(List.of("prior.mean.normal[1] out-of-range"), Plans.problems(narrow));
    ObjectNode wide = Plans.on(rows, "measure", "reported-effect", "model", "bayesian");
    wide.putObject("prior").putObject("tau").put("halfCauchy", 1e300);
    assertTrue(Plans.warnings(Plans.result(wide)).contains("number-out-of-range"));
  }
}
