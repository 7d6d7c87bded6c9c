package gapwise.demonstration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Missing;
import gapwise.evidence.vocabulary.ReadAs;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Habits that published papers have and invented ones seldom think of occur in the records. */
class PublishedFormsTest {
  private static final List<Study> STUDIES = DemonstrationEvidence.studies();

  @TestFactory
  Stream<DynamicTest> habits() {
    OccurringForms forms = new OccurringForms(STUDIES);
    forms.row(
        "a time that does not say where it starts",
        r ->
            r.outcome().needsClock()
                && r.clock().isEmpty()
                && r.missing().get("clock") == Missing.NOT_REPORTED);
    forms.row("nonunion in place of union", r -> r.outcome().code().equals("nonunion"));
    forms.row(
        "quartiles beside a mean",
        r ->
            r.value() instanceof ReportedValue.Quantity q
                && q.summary().mean().isPresent()
                && q.summary().median().isEmpty()
                && q.summary().lowerQuartile().isPresent());
    forms.baseline(
        "all infected, by percentage alone",
        b ->
            b.infected()
                .filter(c -> c.events().isEmpty() && c.percentAsReported().orElse(0) == 100)
                .isPresent());
    forms.length("a length of nothing", s -> s.minimum().orElse(1) == 0);
    forms.study("overlap only suspected", s -> !s.overlapSuspectedWith().isEmpty());
    forms.study(
        "known from another paper", s -> s.readAs().filter(ReadAs.SECOND_HAND::equals).isPresent());
    forms.study(
        "retrospective, nothing more",
        s -> s.design().filter(Design.RETROSPECTIVE::equals).isPresent());
    forms.study("no author known", s -> s.citation().firstAuthor().isEmpty());
    for (String outcome :
        List.of(
            "bone-result-other-criteria",
            "length-transported",
            "infection-after-first-stage",
            "major-adverse-event",
            "major-adverse-events")) {
      forms.row(outcome, r -> r.outcome().code().equals(outcome));
    }
    return forms.checks();
  }

  /** The same stream of patients, so the overlap that is only suspected is one. */
  @Test
  void whereOverlapIsSuspectedTheHospitalAndYearsAreShared() {
    Study later =
        STUDIES.stream().filter(s -> !s.overlapSuspectedWith().isEmpty()).findFirst().orElseThrow();
    Study earlier =
        STUDIES.stream()
            .filter(s -> later.overlapSuspectedWith().equals(List.of(s.id())))
            .findFirst()
            .orElseThrow();
    assertEquals(earlier.centres(), later.centres());
    assertTrue(
        later.recruitmentFrom().orElseThrow().earliestMonth()
            <= earlier.recruitmentTo().orElseThrow().latestMonth());
    assertTrue(later.cohort().isEmpty() && earlier.cohort().isEmpty());
  }

  /** Counted by hand from the grades: every limb of the series has one. */
  @Test
  void everyLimbHasOneGradeByOtherCriteria() {
    OutcomeReport grades =
        STUDIES.stream()
            .flatMap(s -> s.outcomes().stream())
            .filter(r -> r.outcome().code().equals("bone-result-other-criteria"))
            .findFirst()
            .orElseThrow();
    int graded =
        ((ReportedValue.Categories) grades.value())
            .counts().stream().mapToInt(ReportedValue.Category::count).sum();
    assertEquals(14, graded);
  }
}
