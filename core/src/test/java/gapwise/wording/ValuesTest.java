package gapwise.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.EventCount;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class ValuesTest {
  private static final List<ReportedValue> ONE_OF_EACH_FORM =
      List.of(
          new ReportedValue.Events(EventCount.of(9, 9)),
          new ReportedValue.Quantity(QuantitySummary.with(Unit.WEEKS).mean(30).build()),
          new ReportedValue.Rate(4, 12, Unit.YEARS),
          new ReportedValue.Tally(406, OptionalInt.of(282)),
          new ReportedValue.Effect(
              "odds ratio",
              0.4,
              OptionalDouble.of(0.2),
              OptionalDouble.of(0.8),
              OptionalDouble.empty(),
              Optional.empty()),
          new ReportedValue.Categories(List.of(new ReportedValue.Category("good", 3))),
          new ReportedValue.Statement("no difference", OptionalInt.empty()));

  @Test
  void everyFormOfValueHasWords() {
    Set<Class<?>> forms =
        ONE_OF_EACH_FORM.stream().map(Object::getClass).collect(Collectors.toSet());
    assertEquals(Set.copyOf(Arrays.asList(ReportedValue.class.getPermittedSubclasses())), forms);
    for (ReportedValue value : ONE_OF_EACH_FORM) {
      assertFalse(Values.asReported(value).counted().isBlank(), value.toString());
    }
  }

  /** Nine of nine united has the exact lower limit 66 of 100: trade reference, trap 4. */
  @Test
  void nineOfNineStandsWithItsExactInterval() {
    Values values = Values.of(Outcome.of("union"), ONE_OF_EACH_FORM.get(0));
    assertEquals("100 in 100 (66 to 100)", values.share());
  }

  @Test
  void complicationsOfSeveralToAPatientAreNoShare() {
    assertEquals(
        "406 events among 282 patients", Values.asReported(ONE_OF_EACH_FORM.get(3)).counted());
  }

  /** 4 events in 12 years: poisson.test(4, 12) of R 4 gives 0.09082211 to 0.85346573 a year. */
  @Test
  void aRateStandsWithItsExactIntervalForEachHundredUnitsOfTime() {
    Values values = Values.asReported(new ReportedValue.Rate(4, 12, Unit.YEARS));
    assertEquals("4 in 12.0 patient-years", values.counted());
    assertEquals("33.3 in 100 patient-years (9.1 to 85.3)", values.share());
  }

  /** No event in 100 months: the upper limit is -log(0.025) = 3.689 by the closed form. */
  @Test
  void noEventInSomeTimeHasAnUpperLimit() {
    Values values = Values.asReported(new ReportedValue.Rate(0, 100, Unit.MONTHS));
    assertEquals("0.00 in 100 patient-months (0.00 to 3.7)", values.share());
  }

  @Test
  void aTimeTooShortForALimitLeavesTheCountAlone() {
    Values values = Values.asReported(new ReportedValue.Rate(3, Double.MIN_NORMAL, Unit.YEARS));
    assertTrue(values.counted().startsWith("3 in "), values.counted());
    assertEquals("", values.share());
  }
}
