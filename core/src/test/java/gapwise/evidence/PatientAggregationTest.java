package gapwise.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PatientAggregationTest {

  @Test
  void gradesOfSinglePatientsAreCountedByCategoryInTheOrderInWhichTheyAppear() {
    List<PatientRow> patients =
        patients(
            "bone-result",
            new PatientOutcome.Graded("good"),
            new PatientOutcome.Graded("excellent"),
            new PatientOutcome.Graded("good"));
    assertEquals(
        Optional.of(
            new ReportedValue.Categories(
                List.of(
                    new ReportedValue.Category("good", 2),
                    new ReportedValue.Category("excellent", 1)))),
        PatientAggregation.of(Outcome.of("bone-result"), patients));
  }

  @Test
  void patientsOfWhomAnEventIsUnclearAreLeftOutOfTheDenominator() {
    List<PatientRow> patients =
        patients(
            "union",
            new PatientOutcome.Happened(YesOrNo.YES),
            new PatientOutcome.Happened(YesOrNo.UNCLEAR),
            new PatientOutcome.Happened(YesOrNo.NO));
    assertEquals(
        Optional.of(new ReportedValue.Events(EventCount.of(1, 2))),
        PatientAggregation.of(Outcome.of("union"), patients));
  }

  @Test
  void anOutcomeThatNobodyHasIsEmpty() {
    assertEquals(
        Optional.empty(), PatientAggregation.of(Outcome.of("bone-result"), patients("union")));
  }

  private static List<PatientRow> patients(String outcome, PatientOutcome... values) {
    return IntStream.range(0, values.length)
        .mapToObj(
            n ->
                PatientRow.with("case " + n, "A")
                    .outcomes(
                        new TreeMap<>(java.util.Map.of(outcome, Arrays.asList(values).get(n))))
                    .build())
        .toList();
  }
}
