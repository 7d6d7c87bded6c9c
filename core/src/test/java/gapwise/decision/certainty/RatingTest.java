package gapwise.decision.certainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** From start and reasons to a level, on ratings as they were published. */
class RatingTest {
  private static Rating rating(
      Start start, int raised, int bias, int inconsistency, int indirectness, int imprecision) {
    int[] levels = {bias, inconsistency, indirectness, imprecision, 0};
    List<Lowering> lowerings = new ArrayList<>();
    for (Domain domain : Domain.values()) {
      lowerings.add(new Lowering(domain, levels[domain.ordinal()], "as published"));
    }
    return new Rating(start, lowerings, raised);
  }

  @Test
  void publishedRatingsComeToTheirPublishedLevels() {
    // PMC3278052, table 16: trials, imprecision; then trials with bias.
    assertEquals(Level.MODERATE, rating(Start.RANDOMISED, 0, 0, 0, 0, 1).level());
    assertEquals(Level.MODERATE, rating(Start.RANDOMISED, 0, 1, 0, 0, 0).level());
    // Blood Advances, vitamin K: trials, bias, inconsistency, imprecision.
    assertEquals(Level.VERY_LOW, rating(Start.RANDOMISED, 0, 1, 1, 0, 1).level());
    // Guideline NG208, review J, table 5: indirect by one, imprecise by two.
    assertEquals(Level.VERY_LOW, rating(Start.RANDOMISED, 0, 0, 0, 1, 2).level());
    // PMC3406223, table 4: cohorts raised by one.
    assertEquals(Level.MODERATE, rating(Start.COMPARED, 1, 0, 0, 0, 0).level());
    // Int J Pediatr 2014:468538: cohorts, bias and indirectness.
    assertEquals(Level.VERY_LOW, rating(Start.COMPARED, 0, 1, 0, 1, 0).level());
    // PMC9812926, table 2: trials, nothing lowered.
    assertEquals(Level.HIGH, rating(Start.RANDOMISED, 0, 0, 0, 0, 0).level());
    // Guyatt et al., BMJ 2008 (from memory): cohorts raised by two.
    assertEquals(Level.HIGH, rating(Start.COMPARED, 2, 0, 0, 0, 0).level());
  }

  /**
   * PMC3406223, table 4, raised 28 cohorts by one though their results differ and came to low:
   * older practice, which Schunemann et al. (J Clin Epidemiol 2019;111:105) no longer allow.
   */
  @Test
  void whatIsLoweredIsNotRaised() {
    assertThrows(IllegalArgumentException.class, () -> rating(Start.COMPARED, 1, 0, 1, 0, 0));
    assertEquals(Level.VERY_LOW, rating(Start.COMPARED, 0, 0, 1, 0, 0).level());
    assertThrows(IllegalArgumentException.class, () -> rating(Start.ONE_METHOD, 1, 0, 0, 0, 0));
  }

  /** The handbook of the immunisation committee, chapter 10: over critical outcomes the lowest. */
  @Test
  void aDecisionIsAsCertainAsItsLeastCertainCriticalOutcome() {
    assertEquals(Level.MODERATE, Level.lowest(List.of(Level.HIGH, Level.MODERATE, Level.MODERATE)));
  }

  @Test
  void lettersSayWhatLowersAndByHowMuch() {
    assertEquals("BPFF", rating(Start.ONE_METHOD, 0, 1, 0, 1, 2).letters());
    assertEquals("", rating(Start.ONE_METHOD, 0, 0, 0, 0, 0).letters());
  }

  @Test
  void aRatingWithoutADomainIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Rating(Start.ONE_METHOD, List.of(), 0));
  }
}
