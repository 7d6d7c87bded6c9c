package gapwise.demonstration;

import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.ArmDefect;
import gapwise.evidence.EventCount;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.PatientOutcome;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.Phase;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.evidence.vocabulary.Standing;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Each untidy form of reporting occurs in the records themselves, not only in the plans. */
class UntidyFormsTest {
  private static final List<Study> STUDIES = DemonstrationEvidence.studies();

  private final OccurringForms forms = new OccurringForms(STUDIES);

  @TestFactory
  Stream<DynamicTest> formsOfMissingLength() {
    forms.length("mean and standard deviation", s -> has(s, QuantitySummary::standardDeviation));
    forms.length("median and quartiles", s -> s.lowerQuartile().isPresent());
    forms.length("median and range", s -> s.median().isPresent() && s.minimum().isPresent());
    forms.length(
        "mean alone",
        s ->
            s.mean().isPresent()
                && s.minimum().isEmpty()
                && s.standardDeviation().isEmpty()
                && s.unstatedSpread().isEmpty());
    forms.length("range without a middle", s -> s.minimum().isPresent() && s.centre().isEmpty());
    forms.length("millimetres", s -> s.unit() == Unit.MILLIMETRES);
    forms.length(
        "brackets of unstated kind",
        s -> s.unstatedSpread().filter(u -> u.second().isPresent()).isPresent());
    forms.length(
        "plus-minus of unstated kind",
        s -> s.unstatedSpread().filter(u -> u.second().isEmpty()).isPresent());
    forms.defect("threshold over 4 cm", d -> d.overCentimetres().orElse(0) == 4);
    forms.defect(
        "bands with counts", d -> d.bands().stream().filter(b -> b.count() > 0).count() > 1);
    forms.defect(
        "words only",
        d ->
            d.summary().isEmpty()
                && d.bands().isEmpty()
                && d.overCentimetres().isEmpty()
                && d.words().isPresent());
    forms.study(
        "per patient only",
        s ->
            s.arms().stream()
                .anyMatch(
                    a ->
                        ArmDefect.of(s, a)
                            .filter(d -> d.origin() == ArmDefect.Origin.FROM_PATIENTS)
                            .isPresent()));
    forms.study("one length for all arms", s -> s.whole().defect().isPresent());
    forms.study(
        "a patient whose length is not given",
        s -> s.patients().stream().anyMatch(p -> p.defect().isEmpty()));
    forms.study(
        "a length given as about",
        s ->
            s.patients().stream()
                .anyMatch(p -> p.defect().filter(l -> l.approximate()).isPresent()));
    return forms.checks();
  }

  @TestFactory
  Stream<DynamicTest> formsOfCounts() {
    forms.count("percentage alone", c -> c.events().isEmpty());
    forms.count("percentage that contradicts the counts", UntidyFormsTest::contradicts);
    forms.count("events counted back from a percentage", EventCount::countedBack);
    forms.row(
        "arm without infection",
        r ->
            r.outcome().code().contains("infection")
                && OccurringForms.events(r).filter(c -> c.events().orElse(1) == 0).isPresent());
    forms.study(
        "primary and final union apart",
        s -> hasOutcome(s, "primary-union") && hasOutcome(s, "final-union"));
    forms.study("union of unsaid kind", s -> hasOutcome(s, "union"));
    forms.study(
        "patients and limbs in one arm with different totals",
        s -> totals(s, CountedUnit.LIMBS).stream().anyMatch(n -> n > largest(s)));
    forms.row("rate over time in the frame", r -> r.value() instanceof ReportedValue.Rate);
    forms.row("events among patients", r -> r.value() instanceof ReportedValue.Tally);
    forms.study(
        "a grade for each patient",
        s ->
            s.patients().stream()
                .anyMatch(p -> p.outcomes().get("bone-result") instanceof PatientOutcome.Graded));
    forms.row("grades", r -> r.value() instanceof ReportedValue.Categories);
    forms.row("two reports of one number", r -> r.standing() == Standing.ALTERNATIVE);
    forms.study(
        "the same event at two time points", s -> timePoints(s, "infection-recurrence") == 2);
    forms.study("the same score at two time points", s -> timePoints(s, "lefs") == 2);
    forms.row(
        "subgroup by length",
        r -> r.subgroup().filter(g -> g.defectFromCentimetres().isPresent()).isPresent());
    forms.row(
        "subgroup by infection",
        r -> r.subgroup().filter(g -> g.words().contains("infected")).isPresent());
    forms.row(
        "infection after a mixed start",
        r -> r.outcome().code().equals("postoperative-deep-infection"));
    for (String outcome :
        List.of(
            "refracture",
            "unplanned-reoperation",
            "secondary-amputation",
            "donor-site-morbidity",
            "deep-infection",
            "flap-loss",
            "implant-failure",
            "satisfied",
            "lefs",
            "unplanned-operations",
            "return-to-work",
            "death")) {
      forms.row(outcome, r -> r.outcome().code().equals(outcome));
    }
    return forms.checks();
  }

  @TestFactory
  Stream<DynamicTest> formsOfTimesAndQuantities() {
    for (Unit unit : List.of(Unit.DAYS, Unit.WEEKS, Unit.MONTHS)) {
      forms.quantity("time to union in " + unit.symbol(), "time-to-union", s -> s.unit() == unit);
    }
    forms.quantity(
        "index in days", "external-fixation-index", s -> s.unit() == Unit.DAYS_PER_CENTIMETRE);
    forms.quantity(
        "index in months", "external-fixation-index", s -> s.unit() == Unit.MONTHS_PER_CENTIMETRE);
    forms.quantity("frame time", "external-fixation-time", s -> true);
    forms.row(
        "centre and brackets, neither named",
        r ->
            r.value() instanceof ReportedValue.Quantity q
                && q.summary().unstatedSpread().filter(u -> u.centre().isPresent()).isPresent());
    forms.quantity("standard error", "time-to-union", s -> s.standardError().isPresent());
    forms.quantity("limits of a mean", "time-to-union", s -> s.lowerLimit().isPresent());
    forms.quantity("median", "time-to-union", s -> s.median().isPresent());
    forms.quantity(
        "mean without a spread",
        "time-to-union",
        s -> s.mean().isPresent() && s.standardDeviation().isEmpty());
    for (Clock clock : List.of(Clock.INJURY, Clock.FRAME_ON, Clock.GRAFTING)) {
      forms.row("time to union from " + clock.label(), r -> clockIs(r, "time-to-union", clock));
    }
    forms.row(
        "unsupported walking after the frame",
        r -> clockIs(r, "time-to-unsupported-weight-bearing", Clock.FRAME_REMOVAL));
    forms.row(
        "partial weight with a clock",
        r -> r.clock().isPresent() && r.outcome().code().equals("time-to-partial-weight-bearing"));
    forms.row(
        "full weight in a support with a clock",
        r ->
            r.clock().isPresent()
                && r.outcome().code().equals("time-to-full-weight-bearing-in-support"));
    for (Phase phase : Phase.values()) {
      forms.row("phase " + phase.label(), r -> r.phase().filter(phase::equals).isPresent());
    }
    forms.row(
        "cost with price year", r -> r.money().filter(m -> m.priceYear().isPresent()).isPresent());
    forms.row(
        "cost without price year", r -> r.money().filter(m -> m.priceYear().isEmpty()).isPresent());
    return forms.checks();
  }

  @TestFactory
  Stream<DynamicTest> formsOfStudies() {
    forms.row("no difference, without numbers", r -> r.value() instanceof ReportedValue.Statement);
    forms.row("an effect without its arms", r -> r.value() instanceof ReportedValue.Effect);
    forms.row("one value for all arms", r -> r.scope() instanceof Scope.AllArms);
    forms.study(
        "graft inside a scaffold over a fusion nail",
        s -> parts(s).containsAll(Set.of("autograft", "scaffold", "fusion-nail")));
    forms.study(
        "transport through an induced membrane",
        s -> method(s).equals("bone-transport") && parts(s).contains("induced-membrane"));
    forms.study(
        "patients lost",
        s -> s.arms().stream().anyMatch(a -> a.baseline().lostToFollowUp().orElse(0) > 0));
    forms.study(
        "more than a fifth lost",
        s ->
            s.arms().stream()
                .anyMatch(
                    a ->
                        a.baseline().lostToFollowUp().orElse(0)
                            > 0.2 * a.baseline().patients().orElse(99)));
    forms.baseline(
        "all infected, in words", b -> b.infectedAnswer().filter(YesOrNo.YES::equals).isPresent());
    forms.baseline(
        "some infected", b -> b.infectedAtStart().filter(YesOrNo.MIXED::equals).isPresent());
    forms.baseline("segments", b -> !b.segments().isEmpty());
    forms.baseline("two bones", b -> b.bones().size() == 2);
    forms.baseline(
        "limbs and patients differ",
        b -> b.limbs().isPresent() && b.limbs().getAsInt() > b.patients().getAsInt());
    forms.baseline(
        "follow-up in years", b -> b.followUp().filter(f -> f.unit() == Unit.YEARS).isPresent());
    forms.study("recruitment by month", s -> s.recruitmentFrom().orElseThrow().month().isPresent());
    forms.study("recruitment by year", s -> s.recruitmentFrom().orElseThrow().month().isEmpty());
    forms.study(
        "title or words that claim another design",
        s ->
            s.designWords().filter("prospective study"::equals).isPresent()
                && s.arms().size() == 1);
    return forms.checks();
  }

  @Test
  void oneStudyStandsUnderTwoSpellings() {
    List<Study> pairs = STUDIES.stream().filter(s -> !s.sameStudyAs().isEmpty()).toList();
    assertTrue(pairs.size() == 1);
    Study brief = pairs.get(0);
    assertTrue(brief.reportKind() == ReportKind.ABSTRACT);
    assertTrue(brief.citation().otherSpellings().size() == 2);
    assertTrue(STUDIES.stream().anyMatch(s -> brief.sameStudyAs().contains(s.id())));
  }

  @Test
  void twoPapersOfOneCentreReportTheSamePatientsInOverlappingYears() {
    Map<String, List<Study>> cohorts =
        STUDIES.stream()
            .filter(s -> s.cohort().isPresent() && s.reportKind() == ReportKind.ARTICLE)
            .collect(Collectors.groupingBy(s -> s.cohort().orElseThrow()));
    List<Study> pair = cohorts.get(FramePlans.HARBOUR_COHORT);
    assertTrue(pair.size() == 2 && pair.get(0).centres().equals(pair.get(1).centres()));
    assertTrue(
        pair.get(0).recruitmentTo().orElseThrow().latestMonth()
            >= pair.get(1).recruitmentFrom().orElseThrow().earliestMonth());
  }

  private static boolean contradicts(EventCount count) {
    return count.isComplete()
        && count.percentAsReported().isPresent()
        && Math.abs(100 * count.share().orElseThrow() - count.percentAsReported().getAsDouble())
            > 1;
  }

  private static boolean clockIs(OutcomeReport row, String outcome, Clock clock) {
    return row.outcome().code().equals(outcome) && row.clock().filter(clock::equals).isPresent();
  }

  private static boolean hasOutcome(Study study, String code) {
    return study.outcomes().stream().anyMatch(row -> row.outcome().code().equals(code));
  }

  private static long timePoints(Study study, String outcome) {
    return study.outcomes().stream()
        .filter(row -> row.outcome().code().equals(outcome) && row.subgroup().isEmpty())
        .flatMap(row -> row.timePoint().stream())
        .distinct()
        .count();
  }

  private static Set<Integer> totals(Study study, CountedUnit unit) {
    Set<Integer> totals = new TreeSet<>();
    study.outcomes().stream()
        .filter(row -> row.counted().filter(unit::equals).isPresent())
        .flatMap(row -> OccurringForms.events(row).stream())
        .forEach(count -> count.total().ifPresent(totals::add));
    return totals;
  }

  private static int largest(Study study) {
    return totals(study, CountedUnit.PATIENTS).stream().mapToInt(n -> n).max().orElse(999);
  }

  private static Set<String> parts(Study study) {
    return study.arms().stream()
        .flatMap(arm -> arm.method().parts().stream())
        .map(part -> part.code())
        .collect(Collectors.toSet());
  }

  private static String method(Study study) {
    return study.arms().get(0).method().principal().code();
  }

  private static boolean has(
      QuantitySummary summary,
      java.util.function.Function<QuantitySummary, java.util.OptionalDouble> number) {
    return number.apply(summary).isPresent();
  }
}
