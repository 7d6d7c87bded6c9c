package gapwise.demonstration;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import gapwise.evidence.Answer;
import gapwise.evidence.ArmDefect;
import gapwise.evidence.Baseline;
import gapwise.evidence.Clock;
import gapwise.evidence.CountedUnit;
import gapwise.evidence.DefectLength;
import gapwise.evidence.EventCount;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.Phase;
import gapwise.evidence.ReportKind;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Standing;
import gapwise.evidence.Study;
import gapwise.evidence.Summary;
import gapwise.evidence.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Each untidy form of reporting occurs in the records themselves, not only in the plans. */
class UntidyFormsTest {
  private static final List<Study> STUDIES = DemonstrationEvidence.studies();

  private final List<DynamicTest> checks = new ArrayList<>();

  @TestFactory
  Stream<DynamicTest> formsOfMissingLength() {
    length("mean and standard deviation", s -> has(s, Summary::standardDeviation));
    length("median and quartiles", s -> s.lowerQuartile().isPresent());
    length("median and range", s -> s.median().isPresent() && s.minimum().isPresent());
    length(
        "mean alone",
        s ->
            s.mean().isPresent()
                && s.minimum().isEmpty()
                && s.standardDeviation().isEmpty()
                && s.unstatedSpread().isEmpty());
    length("range without a middle", s -> s.minimum().isPresent() && s.centre().isEmpty());
    length("millimetres", s -> s.unit() == Unit.MILLIMETRES);
    length(
        "brackets of unstated kind",
        s -> s.unstatedSpread().filter(u -> u.second().isPresent()).isPresent());
    length(
        "plus-minus of unstated kind",
        s -> s.unstatedSpread().filter(u -> u.second().isEmpty()).isPresent());
    defect("threshold over 4 cm", d -> d.overCentimetres().orElse(0) == 4);
    defect("bands with counts", d -> d.bands().stream().filter(b -> b.count() > 0).count() > 1);
    defect(
        "words only",
        d ->
            d.summary().isEmpty()
                && d.bands().isEmpty()
                && d.overCentimetres().isEmpty()
                && d.words().isPresent());
    study(
        "per patient only",
        s ->
            s.arms().stream()
                .anyMatch(
                    a ->
                        ArmDefect.of(s, a)
                            .filter(d -> d.origin() == ArmDefect.Origin.FROM_PATIENTS)
                            .isPresent()));
    study("one length for all arms", s -> s.whole().defect().isPresent());
    study(
        "a patient whose length is not given",
        s -> s.patients().stream().anyMatch(p -> p.defect().isEmpty()));
    study(
        "a length given as about",
        s ->
            s.patients().stream()
                .anyMatch(p -> p.defect().filter(l -> l.approximate()).isPresent()));
    return checks.stream();
  }

  @TestFactory
  Stream<DynamicTest> formsOfCounts() {
    count("percentage alone", c -> c.events().isEmpty());
    count("percentage that contradicts the counts", UntidyFormsTest::contradicts);
    count("events counted back from a percentage", EventCount::countedBack);
    row(
        "arm without infection",
        r ->
            r.outcome().code().contains("infection")
                && events(r).filter(c -> c.events().orElse(1) == 0).isPresent());
    study(
        "primary and final union apart",
        s -> hasOutcome(s, "primary-union") && hasOutcome(s, "final-union"));
    study("union of unsaid kind", s -> hasOutcome(s, "union"));
    study(
        "patients and limbs in one arm with different totals",
        s -> totals(s, CountedUnit.LIMBS).stream().anyMatch(n -> n > largest(s)));
    row("rate over time in the frame", r -> r.value() instanceof ReportedValue.Rate);
    row("grades", r -> r.value() instanceof ReportedValue.Categories);
    row("two reports of one number", r -> r.standing() == Standing.ALTERNATIVE);
    study("the same event at two time points", s -> timePoints(s, "infection-recurrence") == 2);
    study("the same score at two time points", s -> timePoints(s, "lefs") == 2);
    row(
        "subgroup by length",
        r -> r.subgroup().filter(g -> g.defectFromCentimetres().isPresent()).isPresent());
    row(
        "subgroup by infection",
        r -> r.subgroup().filter(g -> g.words().contains("infected")).isPresent());
    row(
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
      row(outcome, r -> r.outcome().code().equals(outcome));
    }
    return checks.stream();
  }

  @TestFactory
  Stream<DynamicTest> formsOfTimesAndQuantities() {
    for (Unit unit : List.of(Unit.DAYS, Unit.WEEKS, Unit.MONTHS)) {
      quantity("time to union in " + unit.symbol(), "time-to-union", s -> s.unit() == unit);
    }
    quantity("index in days", "external-fixation-index", s -> s.unit() == Unit.DAYS_PER_CENTIMETRE);
    quantity(
        "index in months", "external-fixation-index", s -> s.unit() == Unit.MONTHS_PER_CENTIMETRE);
    quantity("frame time", "external-fixation-time", s -> true);
    quantity("standard error", "time-to-union", s -> s.standardError().isPresent());
    quantity("limits of a mean", "time-to-union", s -> s.lowerLimit().isPresent());
    quantity("median", "time-to-union", s -> s.median().isPresent());
    quantity(
        "mean without a spread",
        "time-to-union",
        s -> s.mean().isPresent() && s.standardDeviation().isEmpty());
    for (Clock clock : List.of(Clock.INJURY, Clock.FRAME_ON, Clock.GRAFTING)) {
      row("time to union from " + clock.label(), r -> clockIs(r, "time-to-union", clock));
    }
    row(
        "unsupported walking after the frame",
        r -> clockIs(r, "time-to-unsupported-weight-bearing", Clock.FRAME_REMOVAL));
    row(
        "partial weight with a clock",
        r -> r.clock().isPresent() && r.outcome().code().equals("time-to-partial-weight-bearing"));
    row(
        "full weight in a support with a clock",
        r ->
            r.clock().isPresent()
                && r.outcome().code().equals("time-to-full-weight-bearing-in-support"));
    for (Phase phase : Phase.values()) {
      row("phase " + phase.label(), r -> r.phase().filter(phase::equals).isPresent());
    }
    row("cost with price year", r -> r.money().filter(m -> m.priceYear().isPresent()).isPresent());
    row("cost without price year", r -> r.money().filter(m -> m.priceYear().isEmpty()).isPresent());
    return checks.stream();
  }

  @TestFactory
  Stream<DynamicTest> formsOfStudies() {
    row("no difference, without numbers", r -> r.value() instanceof ReportedValue.Statement);
    row("an effect without its arms", r -> r.value() instanceof ReportedValue.Effect);
    row("one value for all arms", r -> r.scope() instanceof Scope.AllArms);
    study(
        "graft inside a scaffold over a fusion nail",
        s -> parts(s).containsAll(Set.of("autograft", "scaffold", "fusion-nail")));
    study(
        "transport through an induced membrane",
        s -> method(s).equals("bone-transport") && parts(s).contains("induced-membrane"));
    study(
        "patients lost",
        s -> s.arms().stream().anyMatch(a -> a.baseline().lostToFollowUp().orElse(0) > 0));
    study(
        "more than a fifth lost",
        s ->
            s.arms().stream()
                .anyMatch(
                    a ->
                        a.baseline().lostToFollowUp().orElse(0)
                            > 0.2 * a.baseline().patients().orElse(99)));
    baseline(
        "all infected, in words", b -> b.infectedAnswer().filter(Answer.YES::equals).isPresent());
    baseline("some infected", b -> b.infectedAtStart().filter(Answer.MIXED::equals).isPresent());
    baseline("segments", b -> !b.segments().isEmpty());
    baseline("two bones", b -> b.bones().size() == 2);
    baseline(
        "limbs and patients differ",
        b -> b.limbs().isPresent() && b.limbs().getAsInt() > b.patients().getAsInt());
    baseline(
        "follow-up in years", b -> b.followUp().filter(f -> f.unit() == Unit.YEARS).isPresent());
    study("recruitment by month", s -> s.recruitmentFrom().orElseThrow().month().isPresent());
    study("recruitment by year", s -> s.recruitmentFrom().orElseThrow().month().isEmpty());
    study(
        "title or words that claim another design",
        s ->
            s.designWords().filter("prospective study"::equals).isPresent()
                && s.arms().size() == 1);
    return checks.stream();
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

  private static Optional<EventCount> events(OutcomeReport row) {
    return row.value() instanceof ReportedValue.Events events
        ? Optional.of(events.count())
        : Optional.empty();
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
        .flatMap(row -> events(row).stream())
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
      Summary summary, java.util.function.Function<Summary, java.util.OptionalDouble> number) {
    return number.apply(summary).isPresent();
  }

  private void study(String form, Predicate<Study> occurs) {
    checks.add(dynamicTest(form, () -> assertTrue(STUDIES.stream().anyMatch(occurs))));
  }

  private void row(String form, Predicate<OutcomeReport> occurs) {
    study(form, study -> study.outcomes().stream().anyMatch(occurs));
  }

  private void count(String form, Predicate<EventCount> occurs) {
    row(form, row -> events(row).filter(occurs).isPresent());
  }

  private void quantity(String form, String outcome, Predicate<Summary> occurs) {
    row(
        form,
        row ->
            row.outcome().code().equals(outcome)
                && row.value() instanceof ReportedValue.Quantity quantity
                && occurs.test(quantity.summary()));
  }

  private void baseline(String form, Predicate<Baseline> occurs) {
    study(form, study -> study.arms().stream().anyMatch(arm -> occurs.test(arm.baseline())));
  }

  private void defect(String form, Predicate<DefectLength> occurs) {
    baseline(form, baseline -> baseline.defect().filter(occurs).isPresent());
  }

  private void length(String form, Predicate<Summary> occurs) {
    defect(form, defect -> defect.summary().filter(occurs).isPresent());
  }
}
