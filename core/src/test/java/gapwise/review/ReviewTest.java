package gapwise.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.screening.Reader;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** An invented review. */
class ReviewTest {
  static final Review GAPS =
      new Review(
          "Gaps of the tibia",
          "",
          "Adults",
          List.of("bone-transport"),
          List.of("induced-membrane"),
          List.of(new ReviewOutcome("primary-union", OptionalDouble.of(10), "last follow-up")),
          List.of("adults"),
          List.of(),
          ReviewLimits.NONE,
          List.of(new ReviewPerson(new Reader("AB"), List.of(Duty.EXTRACTS, Duty.SCREENS))));

  private static Review with(List<ReviewOutcome> outcomes, List<ReviewPerson> people) {
    return new Review(
        GAPS.title(),
        GAPS.registration(),
        GAPS.population(),
        GAPS.interventions(),
        GAPS.comparators(),
        outcomes,
        GAPS.include(),
        GAPS.exclude(),
        GAPS.limits(),
        people);
  }

  private static ReviewVersion version(Review review, int version, WorkSoFar work) {
    return new ReviewVersion(review, version, Instant.EPOCH, "AB", "planned", work);
  }

  private static final WorkSoFar NONE = new WorkSoFar(0, 0, 0);
  private static final WorkSoFar SOME = new WorkSoFar(3, 0, 0);

  @Test
  void whatChangedIsToldFieldByField() {
    Review later =
        with(
            List.of(new ReviewOutcome("primary-union", OptionalDouble.of(5), "last follow-up")),
            GAPS.people());
    assertEquals(
        List.of(
            new ReviewChange(
                ReviewField.OUTCOMES,
                "Primary union, last follow-up; a difference of 10 of 100 matters",
                "Primary union, last follow-up; a difference of 5 of 100 matters")),
        ReviewChange.between(GAPS, later));
    assertEquals(List.of(), ReviewChange.between(GAPS, GAPS));
  }

  @Test
  void aDifferenceIsNamedInTheUnitOfItsOutcome() {
    assertEquals(
        "2 months", new ReviewOutcome("time-to-union", OptionalDouble.of(2), "").threshold());
    assertEquals("10 of 100", new ReviewOutcome("union", OptionalDouble.of(10), "").threshold());
    assertEquals(
        "Primary union; no difference that matters is named",
        new ReviewOutcome("primary-union", OptionalDouble.empty(), "").words());
  }

  @Test
  void aChangeOfTheProtocolIsAnAmendmentOnceWorkHasBegunAndOneOfPeopleIsNot() {
    Review protocol = with(List.of(), GAPS.people());
    Review people = with(List.of(), List.of());
    List<ReviewVersion.Step> steps =
        ReviewVersion.steps(
            List.of(
                version(GAPS, 1, NONE),
                version(with(GAPS.outcomes(), List.of()), 2, NONE),
                version(protocol, 3, SOME),
                version(people, 4, SOME)));
    assertEquals(List.of(4, 3, 2, 1), steps.stream().map(one -> one.version().version()).toList());
    assertEquals(
        List.of(false, true, false, false),
        steps.stream().map(ReviewVersion.Step::isAmendment).toList());
    assertFalse(steps.get(3).isLate());
    assertTrue(ReviewVersion.steps(List.of(version(GAPS, 1, SOME))).get(0).isLate());
  }

  @Test
  void whatCannotBeIsRefusedAtBirth() {
    assertThrows(
        IllegalArgumentException.class, () -> new ReviewOutcome("union", OptionalDouble.of(0), ""));
    ReviewOutcome one = new ReviewOutcome("union", OptionalDouble.empty(), "");
    assertThrows(IllegalArgumentException.class, () -> with(List.of(one, one), List.of()));
    ReviewPerson small = new ReviewPerson(new Reader("ab"), List.of());
    assertThrows(
        IllegalArgumentException.class,
        () -> with(List.of(), List.of(small, new ReviewPerson(new Reader("AB"), List.of()))));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new ReviewLimits(
                List.of(),
                OptionalDouble.of(5),
                OptionalDouble.of(4),
                OptionalInt.empty(),
                OptionalInt.empty(),
                ""));
  }
}
