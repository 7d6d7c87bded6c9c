package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.analysis.moderators.RegressionResult;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.bubble.Bubble;
import gapwise.figure.value.Limits;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sentences of a line from 4 to 6 cm; values are invented. */
class LengthWordsTest {
  private static final String OPEN = " Whether that is more than chance cannot be told.";

  private static Bubble.At at(double length, double value) {
    return new Bubble.At(length, value, new Limits(value, value), Optional.empty(), false);
  }

  private static String first(String outcome, double from, double to) {
    Outcome of = Outcome.of(outcome);
    RegressionResult untested =
        new RegressionResult(
            List.of(),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    return new LengthWords(
            of, Told.measure(of, List.of()), List.of(at(4, from), at(6, to)), untested)
        .sentences(LengthShape.LINE)
        .get(0);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "final-union | 0.9 | 0.84 | Final union falls by about 3 of 100 for each further cm.",
        "final-union | 0.9 | 0.908 | Final union rises by less than 1 of 100 for each further cm.",
        "final-union | 0.9 | 0.9008 | Final union hardly changes with the length of missing bone.",
        "time-to-union | 8 | 10.5 | Time to union rises by about 1.3 months for each further cm.",
        "time-to-union | 8 | 8.06 | Time to union hardly changes with the length of missing bone.",
        "total-operations | 2 | 2.008 | All operations for each patient hardly changes with the"
            + " length of missing bone.",
        "union | 0.9 | 0.84 | Union, as the paper counts it, falls by about 3 of 100 for each"
            + " further cm."
      })
  void aSlopeIsToldOnlyWhereItShows(String outcome, double from, double to, String sentence) {
    assertEquals(sentence + OPEN, first(outcome, from, to));
  }
}
