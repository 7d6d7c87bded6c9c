package gapwise.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Arm;
import gapwise.evidence.ArmDefect;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.PatientOutcome;
import gapwise.evidence.PatientRow;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.StudyBuilder;
import gapwise.evidence.Subgroup;
import gapwise.evidence.unit.Duration;
import gapwise.evidence.unit.Length;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Standing;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.search.SearchRequest;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What holds of every selection, on invented studies drawn from a seed. */
class SelectionPropertyTest {
  private static final int STUDIES = 120;

  @TempDir Path folder;

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void everyArmThatReportsTheOutcomeIsARowOrHasAReasonAndNoPatientCountsTwice(long seed) {
    Random random = new Random(seed);
    List<Study> studies = new ArrayList<>();
    for (int i = 0; i < STUDIES; i++) {
      studies.add(study(random, i));
    }
    try (Home home = new Home(folder)) {
      home.keep(studies.toArray(Study[]::new));
      for (String outcome : List.of("union", "time-to-union")) {
        for (Optional<LengthRange> range :
            List.of(Optional.<LengthRange>empty(), Optional.of(new LengthRange(4, 9)))) {
          Question question = question(outcome, range);
          Selection selection = home.selector().select(question);
          assertSound(question, studies, selection);
          assertEquals(selection, home.selector().select(question));
        }
      }
    }
  }

  private static void assertSound(Question question, List<Study> studies, Selection selection) {
    Set<String> rows = new HashSet<>();
    Set<String> cohorts = new HashSet<>();
    Set<String> studiesWithCohort = new HashSet<>();
    for (SelectedRow row : selection.rows()) {
      assertTrue(rows.add(row.study().id() + " " + row.arm().id()), "an arm stands in two rows");
      assertTrue(row.speaksOf().orElse(5) >= 5);
      row.report().ifPresent(report -> assertTrue(report.standing() == Standing.COUNTS));
      row.report()
          .filter(report -> report.subgroup().isPresent())
          .ifPresent(report -> assertEquals(SelectedRow.Basis.SUBGROUP, row.basis()));
      // Silent rows stay; what says its clock is on that of the selection.
      row.clock()
          .filter(stated -> question.outcome().needsClock())
          .ifPresent(stated -> assertEquals(selection.clock(), Optional.of(stated)));
      assertEquals(row.report().flatMap(OutcomeReport::clock).or(row::clock), row.clock());
      if (row.study().cohort().isPresent() && studiesWithCohort.add(row.study().id())) {
        assertTrue(cohorts.add(row.study().cohort().get()), "a cohort stands in two studies");
      }
    }
    assertTrue(rows.size() > 3, "too few rows to say anything");
    Set<String> together = new HashSet<>();
    rows.stream().filter(name -> name.endsWith(" ALL")).forEach(together::add);
    for (SelectedRow row : selection.rows()) {
      boolean one = !row.arm().id().equals("ALL");
      assertFalse(one && together.contains(row.study().id() + " ALL"), "a group counts twice");
    }
    Set<String> reasons = new HashSet<>();
    selection.leftOut().forEach(one -> reasons.add(one.studyId() + " " + one.armId()));
    for (Study study : studies) {
      for (Arm arm : study.arms()) {
        String name = study.id() + " " + arm.id();
        boolean found =
            question
                .among()
                .defect()
                .map(
                    r ->
                        ArmDefect.of(study, arm)
                            .map(d -> d.overlaps(r) || d.leavesOpen(r))
                            .orElse(true))
                .orElse(true);
        boolean named =
            rows.contains(name)
                || reasons.contains(name)
                || together.contains(study.id() + " ALL")
                || reasons.contains(study.id() + " ALL");
        assertEquals(found && reports(study, arm, question.outcome()), named, name);
      }
    }
  }

  private static boolean reports(Study study, Arm arm, Outcome outcome) {
    return study.outcomes().stream()
            .anyMatch(
                r ->
                    r.outcome().equals(outcome)
                        && (r.scope().armIds().isEmpty() || r.scope().armIds().contains(arm.id())))
        || study.patientsOf(arm.id()).stream()
            .anyMatch(p -> p.outcomes().containsKey(outcome.code()));
  }

  private static Question question(String outcome, Optional<LengthRange> range) {
    SearchRequest all = SearchRequest.EVERYTHING;
    return Question.about(
        Outcome.of(outcome),
        range
            .map(lengths -> all.withDefect(lengths, SearchRequest.DefectMatch.OVERLAP))
            .orElse(all));
  }

  private static Study study(Random random, int number) {
    List<Arm> arms = new ArrayList<>();
    List<OutcomeReport> outcomes = new ArrayList<>();
    List<PatientRow> patients = new ArrayList<>();
    int armCount = 1 + random.nextInt(2);
    for (int i = 0; i < armCount; i++) {
      String id = i == 0 ? "A" : "B";
      Baseline.Builder baseline = Baseline.with().patients(3 + random.nextInt(20));
      if (random.nextBoolean()) {
        QuantitySummary length =
            QuantitySummary.with(Unit.CENTIMETRES).mean(1 + random.nextInt(12)).build();
        baseline.defect(DefectLength.of(length));
      }
      arms.add(
          Arm.with(id, MethodUsed.of(Method.of("autograft"))).baseline(baseline.build()).build());
      for (int reports = random.nextInt(4); reports > 0; reports--) {
        outcomes.add(report(random, armCount == 1 || random.nextInt(4) > 0, id));
      }
      for (int rows = random.nextInt(3) == 0 ? random.nextInt(12) : 0; rows > 0; rows--) {
        patients.add(patient(random, "case " + id + rows, id));
      }
    }
    StudyBuilder study =
        Study.with("invented-" + number, Citation.with("Invented study " + number).build())
            .invented(true)
            .arms(arms)
            .outcomes(outcomes)
            .patients(patients);
    if (random.nextInt(4) == 0) {
      study.cohort("cohort " + random.nextInt(6));
    }
    return study.build();
  }

  private static OutcomeReport report(Random random, boolean oneArm, String arm) {
    Scope scope = oneArm ? new Scope.OneArm(arm) : new Scope.AllArms();
    boolean union = random.nextBoolean();
    int total = 3 + random.nextInt(20);
    ReportedValue value =
        switch (random.nextInt(5)) {
          case 0 -> new ReportedValue.Statement("as expected", OptionalInt.empty());
          case 1 -> new ReportedValue.Events(EventCount.ofPercent(random.nextInt(101)));
          default ->
              union
                  ? new ReportedValue.Events(EventCount.of(random.nextInt(total), total))
                  : new ReportedValue.Quantity(
                      QuantitySummary.with(Unit.MONTHS)
                          .n(total)
                          .mean(8)
                          .standardDeviation(2)
                          .build());
        };
    OutcomeReport.Builder report =
        OutcomeReport.with(scope, Outcome.of(union ? "union" : "time-to-union"), value);
    if (random.nextInt(3) > 0) {
      report.clock(random.nextBoolean() ? Clock.INJURY : Clock.GRAFTING);
    }
    if (random.nextInt(3) == 0) {
      report.timePoint(Duration.ofMonths(6 * (1 + random.nextInt(4))));
    }
    if (random.nextInt(5) == 0) {
      report.standing(Standing.values()[random.nextInt(3)]);
    }
    if (random.nextInt(5) == 0) {
      double from = random.nextInt(9);
      report.subgroup(new Subgroup("a part", OptionalDouble.of(from), OptionalDouble.of(from + 2)));
    }
    return report.build();
  }

  private static PatientRow patient(Random random, String id, String arm) {
    TreeMap<String, PatientOutcome> outcomes = new TreeMap<>();
    if (random.nextInt(5) > 0) {
      outcomes.put("union", new PatientOutcome.Happened(YesOrNo.values()[random.nextInt(4)]));
    }
    PatientRow.Builder patient = PatientRow.with(id, arm).outcomes(outcomes);
    if (random.nextInt(4) > 0) {
      patient.defect(new Length(1 + random.nextInt(12), Unit.CENTIMETRES, false));
    }
    return patient.build();
  }
}
