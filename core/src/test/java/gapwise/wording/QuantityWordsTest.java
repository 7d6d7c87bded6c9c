package gapwise.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.unit.Unit;
import java.util.Optional;
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

  /** What one patient took is no mean, no median and no range. */
  @Test
  void aSinglePatientHasOneNumber() {
    QuantitySummary alone =
        QuantitySummary.with(Unit.MONTHS)
            .n(1)
            .mean(8.1)
            .median(8.1)
            .minimum(8.1)
            .maximum(8.1)
            .build();
    assertEquals("8.1 months", QuantityWords.asReported(alone));
    assertEquals("8.1 months", QuantityWords.centre(alone, Unit.MONTHS));
    assertEquals(Optional.empty(), QuantityWords.spread(alone, Unit.MONTHS));
  }

  @Test
  void aListHasOneNumberAndOneSpread() {
    QuantitySummary several =
        QuantitySummary.with(Unit.MONTHS)
            .mean(9.7)
            .median(9.2)
            .standardDeviation(2.9)
            .minimum(6)
            .maximum(13.7)
            .build();
    assertEquals("mean 9.7 months", QuantityWords.centre(several, Unit.MONTHS));
    assertEquals(Optional.of("SD 2.9"), QuantityWords.spread(several, Unit.MONTHS));
    QuantitySummary ends = QuantitySummary.with(Unit.MONTHS).minimum(6).maximum(13.7).build();
    assertEquals("6 to 13.7 months", QuantityWords.centre(ends, Unit.MONTHS));
    assertEquals(Optional.empty(), QuantityWords.spread(ends, Unit.MONTHS));
  }
}
