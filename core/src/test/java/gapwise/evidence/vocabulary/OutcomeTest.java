package gapwise.evidence.vocabulary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
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

  /** In whole sentences, none of which is the caution again. */
  @Test
  void everyOutcomeSaysWhatItMeansAndWherePapersDiffer() {
    Set<String> seen = new HashSet<>();
    for (Outcome outcome : Outcome.vocabulary().all()) {
      for (String words : List.of(outcome.meaning(), outcome.differs())) {
        assertTrue(words.matches("[A-Z].*\\."), outcome.code() + ": " + words);
      }
      assertFalse(outcome.differs().contains(";"), outcome.code());
      assertTrue(outcome.differs().length() > 60, outcome.code());
      assertNotEquals(outcome.caution(), Optional.of(outcome.differs()), outcome.code());
      seen.add(outcome.differs());
    }
    // The two components of one score differ in the same ways.
    assertEquals(Outcome.vocabulary().all().size() - 1, seen.size());
  }

  /** A length with a sign; scores, of which one goes below 0; what is counted and no amount. */
  @ParameterizedTest
  @ValueSource(strings = {"limb-length-discrepancy", "lefs", "eq5d", "pain", "union"})
  void differencesScoresAndEventsAreNot(String code) {
    assertFalse(Outcome.of(code).isNeverNegative());
  }
}
