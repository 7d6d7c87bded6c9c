package gapwise.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.unit.Unit;
import org.junit.jupiter.api.Test;

class QuantityWordsTest {
  @Test
  void whatIsKnownStandsInOneOrderWithItsUnitLast() {
    assertEquals(
        "mean 8, median 7, SD 2, 95 % limits 7.1 to 8.9, middle half 6 to 9, 4 to 14 months",
        QuantityWords.asReported(
            QuantitySummary.with(Unit.MONTHS)
                .mean(8)
                .median(7)
                .standardDeviation(2)
                .lowerLimit(7.1)
                .upperLimit(8.9)
                .lowerQuartile(6)
                .upperQuartile(9)
                .minimum(4)
                .maximum(14)
                .build()));
  }

  @Test
  void oneEndAloneSaysWhichItIs() {
    assertEquals(
        "95 % limits from 7.1, middle half up to 9, from 4 months",
        QuantityWords.asReported(
            QuantitySummary.with(Unit.MONTHS).lowerLimit(7.1).upperQuartile(9).minimum(4).build()));
  }
}
