package gapwise.decision.situation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.evidence.ArmDefect;
import gapwise.evidence.DefectLength;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.Unit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** How the missing bone of a group matches what is asked. */
class MatchesTest {
  private static final LengthRange SIX = new LengthRange(6, 6);

  private static Optional<ArmDefect> of(QuantitySummary summary) {
    return Optional.of(
        new ArmDefect(DefectLength.of(summary), ArmDefect.Origin.REPORTED_FOR_ARM, List.of()));
  }

  private static Match length(LengthRange asked, double mean, double from, double to) {
    return Matches.length(
        asked,
        of(QuantitySummary.with(Unit.CENTIMETRES).mean(mean).minimum(from).maximum(to).build()),
        false);
  }

  @Test
  void aMeanWithinAQuarterOfOneLengthIsInside() {
    assertEquals(Match.INSIDE, length(SIX, 7.5, 3, 12));
    assertEquals(Match.EDGE, length(SIX, 7.6, 3, 12));
    assertEquals(Match.OUTSIDE, length(SIX, 9, 7, 12));
  }

  @Test
  void ofARangeThatIsAskedNothingIsAdded() {
    assertEquals(Match.EDGE, length(new LengthRange(4, 6), 6.5, 3, 12));
    assertEquals(Match.INSIDE, length(new LengthRange(4, 6), 6, 3, 12));
  }

  @Test
  void onlyAThresholdLeavesItOpen() {
    ArmDefect over =
        new ArmDefect(
            new DefectLength(
                Optional.empty(),
                OptionalDouble.of(4),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()),
            ArmDefect.Origin.REPORTED_FOR_ARM,
            List.of());
    assertEquals(Match.UNKNOWN, Matches.length(SIX, Optional.of(over), false));
    assertEquals(Match.UNKNOWN, Matches.length(SIX, Optional.empty(), false));
    assertEquals(Match.OUTSIDE, Matches.length(new LengthRange(2, 2), Optional.of(over), false));
  }

  @Test
  void patientsPickedByTheirLengthAreInside() {
    assertEquals(Match.INSIDE, Matches.length(SIX, Optional.empty(), true));
  }
}
