package gapwise.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.unit.Day;
import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.Outcome;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Studies and judgements are invented for these tests. */
class AppraisalTest {
  private static Appraisal.Answer answer(String item, String judgement) {
    return new Appraisal.Answer(item, judgement, Optional.of("said so"), Optional.of("p. 3"));
  }

  private static Appraisal of(Appraisal.Answer... answers) {
    return new Appraisal(
        Instrument.of("robins-i"),
        "2016",
        Optional.of(Outcome.of("union")),
        Optional.of("transport against membrane"),
        List.of(answers),
        Optional.of(new Appraisal.Overall("serious", Optional.of("crude"), Optional.of("Table 2"))),
        List.of("AB", "CD"),
        Day.parse("2026-05-14"));
  }

  @Test
  void aStudyKeepsItsAppraisalsAsStored() {
    Study study =
        EvidenceJsonTest.example()
            .but()
            .appraisals(List.of(of(answer("confounding", "serious"))))
            .build();
    assertEquals(study, EvidenceJson.read(EvidenceJson.write(study)));
    assertTrue(EvidenceJson.write(study).contains("\"on\":\"2026-05-14\""));
  }

  @Test
  void whatWasStoredBeforeStudiesWereJudgedHasNoAppraisal() {
    String old = EvidenceJson.write(EvidenceJsonTest.example());
    assertTrue(!old.contains("appraisals"));
    assertEquals(List.of(), EvidenceJson.read(old).appraisals());
  }

  @Test
  void itemsAndJudgementsAreThoseOfTheInstrument() {
    assertSaid("ROBINS-I has no item 'aim'", () -> of(answer("aim", "low")));
    assertSaid(
        "ROBINS-I does not allow 'high' for confounding", () -> of(answer("confounding", "high")));
    assertSaid(
        "an appraisal by ROBINS-I has two answers to confounding",
        () -> of(answer("confounding", "low"), answer("confounding", "serious")));
  }

  @Test
  void twoStarsAreForComparabilityAlone() {
    Instrument stars = Instrument.of("newcastle-ottawa");
    assertTrue(stars.judgement(stars.item("comparability").orElseThrow(), "two-stars").isPresent());
    assertTrue(stars.judgement(stars.item("follow-up").orElseThrow(), "two-stars").isEmpty());
  }

  @Test
  void oneMatterIsJudgedOnce() {
    Appraisal first = of(answer("confounding", "serious"));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            EvidenceJsonTest.example()
                .but()
                .appraisals(List.of(first, of(answer("selection", "low"))))
                .build());
  }

  private static void assertSaid(String message, org.junit.jupiter.api.function.Executable made) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, made).getMessage());
  }
}
