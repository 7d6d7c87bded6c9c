package gapwise.analysis.multiverse;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.synthesis.multiverse.Choice;
import gapwise.synthesis.multiverse.ChoiceMove;
import gapwise.synthesis.multiverse.Multiverse;
import gapwise.synthesis.multiverse.Sides;
import gapwise.synthesis.multiverse.Spread;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A multiverse in one sentence, with each of its clauses and without. */
class MultiverseSentenceTest {
  private static final Multiverse EMPTY = new Multiverse(List.of(), List.of());
  private static final Spread SPREAD = new Spread(1440, 0.81, 0.84, 0.853, 0.86, 0.9);
  private static final ChoiceMove MODEL =
      new ChoiceMove(
          new Choice("model", List.of("one", "other")),
          OptionalDouble.of(0.02),
          OptionalDouble.of(0.4),
          List.of());
  private static final MultiverseResult.StudyMoved STUDY =
      new MultiverseResult.StudyMoved("A 2001", OptionalDouble.of(0.84), OptionalDouble.of(-0.013));

  private static String sentence(
      Optional<Sides> sides, List<ChoiceMove> moves, List<MultiverseResult.StudyMoved> studies) {
    return MultiverseSentence.of(
        EMPTY,
        new MultiverseSentence.Told(Optional.empty(), Optional.of(SPREAD), sides),
        moves,
        studies);
  }

  private static String withSides(int below, int above, int endBelow, int beginAbove) {
    Sides sides = new Sides(0.85, 1440, below, above, endBelow, beginAbove);
    return sentence(Optional.of(sides), List.of(), List.of())
        .substring("Over 1440 analyses the pooled value goes from 0.81 to 0.9, ".length());
  }

  @Test
  void withoutAPooledValueTheSentenceSaysThatThereIsNone() {
    assertEquals(
        "None of 0 analyses gives a pooled value.",
        MultiverseSentence.of(
            EMPTY,
            new MultiverseSentence.Told(Optional.empty(), Optional.empty(), Optional.empty()),
            List.of(),
            List.of()));
  }

  @Test
  void theRangeStandsAlone() {
    assertEquals(
        "Over 1440 analyses the pooled value goes from 0.81 to 0.9, with 0.853 in the middle.",
        sentence(Optional.empty(), List.of(), List.of()));
  }

  @Test
  void whatMovesItMostFollows() {
    String start = "Over 1440 analyses the pooled value goes from 0.81 to 0.9, with 0.853 in the";
    assertEquals(
        start
            + " middle; of the choices model moves it most; of the studies leaving out A 2001"
            + " does.",
        sentence(Optional.empty(), List.of(MODEL), List.of(STUDY)));
    assertEquals(
        start + " middle; of the studies leaving out A 2001 moves it most.",
        sentence(Optional.empty(), List.of(), List.of(STUDY)));
  }

  @Test
  void theSideOfTheThresholdAndItsIntervalsAreTold() {
    assertEquals(
        "with 0.853 in the middle; all lie below 0.85, and no interval includes it.",
        withSides(1440, 0, 1440, 0));
    assertEquals(
        "with 0.853 in the middle; all lie above 0.85, and every interval includes it.",
        withSides(0, 1440, 0, 0));
    assertEquals(
        "with 0.853 in the middle; the side of 0.85 hangs on the choices (400 below, 1040 above),"
            + " and 1 interval includes it.",
        withSides(400, 1040, 400, 1039));
    assertEquals(
        "with 0.853 in the middle; the side of 0.85 hangs on the choices (400 below, 1040 above),"
            + " and 1240 intervals include it.",
        withSides(400, 1040, 100, 100));
  }
}
