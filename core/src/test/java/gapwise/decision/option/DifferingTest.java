package gapwise.decision.option;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.figure.value.Quantity;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DifferingTest {
  private static Column column(Aspect aspect, Quantity measure) {
    return new Column(
        aspect, List.of(), measure, List.of(), OptionalDouble.empty(), List.of(), List.of());
  }

  /** What a person chose is no estimate, and another number would be another question. */
  @ParameterizedTest
  @CsvSource({
    "0.1, 10 of 100",
    "0.025, 2.5 of 100",
    "0.07, 7 of 100",
    "0.029, 2.9 of 100",
    "0.004, 0.4 of 100",
    "1, 100 of 100"
  })
  void aDifferenceOfSharesIsSaidAsChosen(double difference, String words) {
    assertEquals(
        words,
        Differing.mattering(column(Aspect.UNION, Quantity.of100()), difference)
            .replace('\u00a0', ' '));
  }

  @Test
  void aDifferenceOfMonthsIsSaidAsChosen() {
    Column time = column(Aspect.FRAME_TIME, Quantity.mean("months"));
    assertEquals("2 months", Differing.mattering(time, 2).replace('\u00a0', ' '));
    assertEquals("0.25 months", Differing.mattering(time, 0.25).replace('\u00a0', ' '));
  }
}
