package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.Runner;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Trials so small that the normal approximation does not hold: the headline is the size of Fisher's
 * exact test. Sizes and powers over every outcome by SciPy: core/src/test/reference/edges.py.
 */
class TrialOfFewPatientsTest {
  @ParameterizedTest
  @CsvSource({
    "0.05, 0.95, 5, 0.9138616441193359",
    "0.1, 0.9, 7, 0.8416400187883599",
    "0.2, 0.9, 9, 0.8296559655111313",
    "0.9, 0.1, 7, 0.8416400187883599"
  })
  void isSizedByTheExactTest(double comparator, double intervention, int arm, double power) {
    JsonNode trial =
        Runner.withoutEvidence()
            .run(
                "{\"task\": \"trial\", \"comparator\": "
                    + comparator
                    + ", \"intervention\": "
                    + intervention
                    + "}",
                Optional.empty())
            .json()
            .get("trial");
    assertEquals("exact-test", trial.get("basis").asText());
    assertEquals(arm, trial.get("patientsPerArm").asInt());
    assertEquals(2 * arm, trial.get("patients").asInt());
    assertEquals(power, trial.get("powerOfExactTest").asDouble(), 1e-8);
  }
}
