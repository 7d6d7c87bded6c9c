package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.evidence.ArmFollowUp;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.unit.Unit;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShortFollowUpTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1|0|1 of 14 series was followed for less than 24 months on average",
        "3|0|3 of 14 series were followed for less than 24 months on average",
        "3|1|3 of 14 series were followed for less than 24 months on average, 1 does not say how long",
        "0|2|2 of 14 series do not say whether they followed for 24 months"
      })
  void shortAndSilentSeriesAreCounted(int shorter, int unknown, String words) {
    assertEquals(
        words + " (that limit is common practice, no source)",
        new ShortFollowUp(24, shorter, unknown, 14).words());
  }

  /** The shortest follow-up bounds an average from below and leaves it open above. */
  @ParameterizedTest
  @CsvSource({"24, true", "30, true", "12, unknown"})
  void aShortestFollowUpAloneNeverMakesASeriesShort(double minimum, String reaches) {
    ArmFollowUp followUp =
        new ArmFollowUp(QuantitySummary.with(Unit.MONTHS).minimum(minimum).build());
    assertEquals(reaches, followUp.reaches(24).map(String::valueOf).orElse("unknown"));
  }

  @ParameterizedTest
  @CsvSource({"24, true", "23.9, false"})
  void anAverageDecides(double mean, boolean reaches) {
    ArmFollowUp followUp =
        new ArmFollowUp(QuantitySummary.with(Unit.MONTHS).mean(mean).minimum(1).build());
    assertEquals(Optional.of(reaches), followUp.reaches(24));
  }
}
