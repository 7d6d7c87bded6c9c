package gapwise.evidence.vocabulary;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OutcomeTest {
  /** A time, an index, a volume, a number of operations, money, and two lengths without a sign. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "time-to-union",
        "external-fixation-index",
        "blood-loss",
        "total-operations",
        "cost",
        "six-minute-walk",
        "length-transported"
      })
  void whatHasNoSignAndNoUpperEndIsNeverNegative(String code) {
    assertTrue(Outcome.of(code).isNeverNegative());
  }

  /** A length with a sign; scores, of which one goes below 0; what is counted and no amount. */
  @ParameterizedTest
  @ValueSource(strings = {"limb-length-discrepancy", "lefs", "eq5d", "pain", "union"})
  void differencesScoresAndEventsAreNot(String code) {
    assertFalse(Outcome.of(code).isNeverNegative());
  }
}
