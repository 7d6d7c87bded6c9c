package gapwise.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
import gapwise.evidence.EventCount;
import gapwise.evidence.KeptApart;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.PatientOutcome;
import gapwise.evidence.PatientRow;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.QuantitySummaryBuilder;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.StudyBuilder;
import gapwise.evidence.Subgroup;
import gapwise.evidence.UnstatedSpread;
import gapwise.evidence.unit.Duration;
import gapwise.evidence.unit.Length;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.Money;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.ApartReason;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.DefinitionKind;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.ReadAs;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.evidence.vocabulary.Standing;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.problem.Problem;
import gapwise.search.SearchAnswer.ArmHit;
import gapwise.search.SearchRequest;
import gapwise.selection.Question.SuspectedOverlap;
import gapwise.selection.SelectedRow.Basis;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which value of an arm answers a question, and why others do not; all studies are invented. */
class SelectorTest {
  private static final Outcome UNION = Outcome.of("union");
  private static final Outcome NONUNION = Outcome.of("nonunion");
  private static final Outcome COST = Outcome.of("cost");
  private static final Outcome TIME = Outcome.of("time-to-union");

  @TempDir Path folder;
  private Home home;

  @BeforeEach
  void open() {
    home = new Home(folder);
  }

  @AfterEach
  void close() {
    home.close();
  }

  @Test
  void aReportedValueOfTheWholeArmIsTaken() {
    home.keep(study("a", union(11, 12)));
    Selection selection = home.selector().select(about(UNION));
    SelectedRow row = onlyRow(selection);
    assertEquals(new ReportedValue.Events(EventCount.of(11, 12)), row.value());
    assertEquals(Basis.REPORTED, row.basis());
    assertEquals(1, row.studyVersion());
    assertEquals(List.of(), selection.leftOut());
    assertEquals(home.base.lastChange(), selection.change());
  }

  @Test
  void onlyTheReportThatCountsIsTaken() {
    home.keep(
        study(
            "a",
            union(11, 12),
            events(9, 12).standing(Standing.ALTERNATIVE).build(),
            events(8, 12).standing(Standing.SUPERSEDED).build()));
    Selection selection = home.selector().select(about(UNION));
    assertEquals(new ReportedValue.Events(EventCount.of(11, 12)), onlyRow(selection).value());
    assertEquals(List.of("another-report", "superseded"), codes(selection));
  }

  @Test
  void aNumberGivenTwiceIsTakenOnce() {
    home.keep(study("a", union(11, 12), union(11, 12), events(9, 10).build()));
    Selection selection = home.selector().select(about(UNION));
    assertEquals(11, events(onlyRow(selection)));
    assertEquals(List.of("another-report", "another-report"), codes(selection));
  }

  @Test
  void theLatestTimePointIsTaken() {
    home.keep(
        study(
            "a",
            events(9, 12).timePoint(Duration.ofMonths(12)).build(),
            events(10, 12).timePoint(new Duration(2, Unit.YEARS)).build(),
            events(5, 12).timePoint(new Duration(26, Unit.WEEKS)).build()));
    Selection selection = home.selector().select(about(UNION));
    assertEquals(new ReportedValue.Events(EventCount.of(10, 12)), onlyRow(selection).value());
    assertEquals(List.of("another-time-point", "another-time-point"), codes(selection));
    assertTrue(selection.leftOut().get(0).message().contains("12 months"));
  }

  @Test
  void aReportWithoutTimePointSpeaksOfTheEndOfFollowUp() {
    home.keep(study("a", events(9, 12).timePoint(Duration.ofMonths(12)).build(), union(11, 12)));
    Selection selection = home.selector().select(about(UNION));
    assertEquals(new ReportedValue.Events(EventCount.of(11, 12)), onlyRow(selection).value());
  }

  @Test
  void aSubgroupNeverStandsBesideOrInsteadOfTheTotal() {
    OutcomeReport part = events(6, 6).subgroup(band(4, 6)).build();
    home.keep(study("a", union(11, 12), part), study("b", part));
    Selection plain = home.selector().select(about(UNION));
    assertEquals("a", onlyRow(plain).study().id());
    assertEquals(List.of("subgroup", "subgroup"), codes(plain));
    Selection ranged = home.selector().select(about(UNION, 2, 20));
    assertEquals(List.of(Basis.REPORTED, Basis.SUBGROUP), bases(ranged));
    assertEquals(List.of("subgroup"), codes(ranged));
    SelectedRow stand = ranged.rows().get(1);
    assertEquals(Optional.of(new LengthRange(4, 6)), stand.defect().get().length().reportedRange());
    assertEquals(OptionalInt.of(6), stand.speaksOf());
  }

  @Test
  void aSubgroupThatReachesOutOfTheRangeDoesNotStandForTheArm() {
    home.keep(
        study("a", events(6, 6).subgroup(band(4, 8)).build()),
        study(
            "b",
            events(6, 6)
                .subgroup(new Subgroup("over 4 cm", OptionalDouble.of(4), OptionalDouble.empty()))
                .build()),
        study(
            "c",
            events(6, 6)
                .subgroup(new Subgroup("smokers", OptionalDouble.empty(), OptionalDouble.empty()))
                .build()));
    Selection closed = home.selector().select(about(UNION, 4, 7));
    assertEquals(List.of(), closed.rows());
    assertEquals(List.of("subgroup", "subgroup", "subgroup"), codes(closed));
    Selection open = home.selector().select(about(UNION, 4, Double.POSITIVE_INFINITY));
    assertEquals(List.of("a", "b"), studies(open));
  }

  @Test
  void aPercentageIsCountedBackWhereOneWholeNumberGivesIt() {
    home.keep(
        study("a", percent(91.7, 12)), // 11 of 12
        study("b", percent(66.67, 30)), // 20 of 30
        study("c", percent(50, 300)), // 149, 150 or 151 of 300
        study("d", percent(40, 12)), // 5 of 12 are 41.7 %, 4 are 33.3 %
        study("e", percent(100, 9)),
        study("f", report(UNION, new ReportedValue.Events(EventCount.ofPercent(80))).build()));
    Selection selection = home.selector().select(about(UNION));
    assertEquals(List.of("a", "b", "e"), studies(selection));
    assertEquals(List.of(11, 20, 9), selection.rows().stream().map(SelectorTest::events).toList());
    assertTrue(bases(selection).stream().allMatch(Basis.COUNTED_BACK::equals));
    assertEquals(
        List.of("percentage-without-count", "percentage-without-count", "percentage-without-count"),
        codes(selection));
  }

  @Test
  void wordsComparisonsAndEffectsAreLeftOut() {
    home.keep(
        study(
            "a",
            report(UNION, new ReportedValue.Statement("all united", OptionalInt.empty())).build()),
        twoArms(
            "b",
            OutcomeReport.with(
                    new Scope.Comparison("A", "B"),
                    UNION,
                    new ReportedValue.Statement("no difference", OptionalInt.empty()))
                .build()),
        twoArms("c", OutcomeReport.with(new Scope.AllArms(), UNION, value(19, 20)).build()));
    Selection selection = home.selector().select(about(UNION));
    assertEquals(List.of("c"), studies(selection));
    assertEquals(List.of("no-numbers", "comparison-only", "comparison-only"), codes(selection));
  }

  @Test
  void aValueForAllGroupsIsARowOfItsOwnWhereNoGroupHasAValue() {
    home.keep(twoArms("c", OutcomeReport.with(new Scope.AllArms(), UNION, value(19, 20)).build()));
    SelectedRow row = onlyRow(home.selector().select(about(UNION)));
    assertEquals("ALL", row.arm().id());
    assertTrue(row.label().endsWith(", all groups together"), row.label());
    assertEquals(Method.of("induced-membrane"), row.arm().method().principal());
    assertEquals(OptionalInt.of(20), row.speaksOf());
    assertEquals(
        List.of("c"),
        studies(
            home.selector()
                .select(
                    about(UNION)
                        .withAmong(
                            SearchRequest.EVERYTHING.withMethods(Set.of("induced-membrane"))))));
  }

  @Test
  void aValueForAllGroupsNeverStandsBesideAValueOfOneOfThem() {
    home.keep(
        twoArms(
            "c",
            OutcomeReport.with(new Scope.AllArms(), UNION, value(19, 20)).build(),
            OutcomeReport.with(new Scope.OneArm("A"), UNION, value(9, 10)).build()));
    Selection selection = home.selector().select(about(UNION));
    assertEquals("A", onlyRow(selection).arm().id());
    assertEquals(List.of("value-for-all-arms", "value-for-all-arms"), codes(selection));
  }

  @Test
  void aValueForGroupsOfSeveralMethodsIsOfNoMethodAndOnlyTakenOverAllOfThem() {
    Study study =
        twoArms("c", OutcomeReport.with(new Scope.AllArms(), UNION, value(19, 20)).build());
    Arm graft = Arm.with("B", MethodUsed.of(Method.of("autograft"))).build();
    home.keep(study.but().arms(List.of(study.arms().get(0), graft)).build());
    Selection over = home.selector().select(about(UNION));
    assertTrue(onlyRow(over).isOfSeveralMethods());
    Selection byMethod = over.byMethod();
    assertEquals(List.of(), byMethod.rows());
    assertEquals(List.of("value-for-all-arms"), codes(byMethod));
    Selection grafts =
        home.selector()
            .select(
                about(UNION).withAmong(SearchRequest.EVERYTHING.withMethods(Set.of("autograft"))));
    assertEquals(List.of(), grafts.rows());
    assertEquals(List.of("value-for-all-arms"), codes(grafts));
  }

  @Test
  void nonunionOfNAndUnionOfNAreOneOutcomeSeenFromTwoSides() {
    home.keep(
        study("a", report(NONUNION, value(3, 20)).build()),
        study("b", union(11, 12), report(NONUNION, value(2, 12)).build()),
        study(
            "c",
            report(
                    NONUNION,
                    new ReportedValue.Events(
                        new EventCount(
                            OptionalInt.empty(),
                            OptionalInt.of(12),
                            OptionalDouble.of(8.3),
                            false)))
                .build()));
    Selection united = home.selector().select(about(UNION));
    assertEquals(List.of("a", "b", "c"), studies(united));
    assertEquals(List.of(17, 11, 11), united.rows().stream().map(SelectorTest::events).toList());
    assertEquals(
        Optional.of("from its other side: 3 of 20 not united"),
        united.rows().get(0).otherSideWords());
    assertEquals(Optional.empty(), united.rows().get(1).otherSideWords());
    assertEquals(List.of("from-other-side"), noteCodes(united));
    assertEquals(
        "2 of 3 groups report the other side alone (“Nonunion, as the paper counts it”). The rest"
            + " of their patients are counted as united, which need not be true of all of them.",
        united.notes().get(0).message());
    assertEquals(List.of(), united.leftOut());
    Selection not = home.selector().select(about(NONUNION));
    assertEquals(List.of(3, 2, 1), not.rows().stream().map(SelectorTest::events).toList());
    assertEquals(List.of(), noteCodes(not));
  }

  @Test
  void patientsAreCountedFromTheOtherSideWhereOnlyThatIsKnownOfThem() {
    home.keep(patients("a", 6, 2, 3, 4, 5, 6, 8));
    SelectedRow row = onlyRow(home.selector().select(about(NONUNION)));
    assertEquals(Basis.FROM_PATIENTS, row.basis());
    assertEquals(2, events(row));
    assertEquals(Optional.of("from its other side: 4 of 6 united"), row.otherSideWords());
  }

  @Test
  void infectionThatCameBackIsNotTheOtherSideOfInfectionCured() {
    home.keep(study("a", report(Outcome.of("infection-recurrence"), value(4, 20)).build()));
    Selection cured = home.selector().select(about(Outcome.of("infection-eradication")));
    assertEquals(List.of(), cured.rows());
    assertEquals(List.of(), cured.leftOut());
  }

  @Test
  void groupsThatAStudyGivesOneNameAreToldApartByTheirLetter() {
    MethodUsed method = MethodUsed.of(Method.of("induced-membrane"));
    List<OutcomeReport> reports =
        Stream.of("A", "B", "C")
            .map(arm -> OutcomeReport.with(new Scope.OneArm(arm), UNION, value(9, 10)).build())
            .toList();
    home.keep(
        study("a")
            .but()
            .arms(
                List.of(
                    Arm.with("A", method).label("Membrane").build(),
                    Arm.with("B", method).label("Membrane").build(),
                    Arm.with("C", method).label("Membrane over a nail").build()))
            .outcomes(reports)
            .build());
    assertEquals(
        List.of(", Membrane (A)", ", Membrane (B)", ", Membrane over a nail"),
        home.selector().select(about(UNION)).rows().stream()
            .map(row -> row.label().replaceFirst("^.*?(?=, Membrane)", ""))
            .toList());
  }

  @Test
  void aValueForAllArmsCountsForTheOnlyArm() {
    home.keep(study("a", OutcomeReport.with(new Scope.AllArms(), UNION, value(19, 20)).build()));
    assertEquals(19, events(onlyRow(home.selector().select(about(UNION)))));
  }

  @Test
  void quantitiesNeedACentreAndAUnitThatFitsAndNoSpreadThatSaysWhatItIs() {
    home.keep(
        study("a", time(QuantitySummary.with(Unit.WEEKS).n(12).mean(30).standardDeviation(5))),
        study("b", time(QuantitySummary.with(Unit.MONTHS).n(12).minimum(4).maximum(12))),
        study(
            "c",
            time(
                QuantitySummary.with(Unit.MONTHS)
                    .n(12)
                    .mean(8)
                    .unstatedSpread(new UnstatedSpread(2, OptionalDouble.empty())))),
        study("d", time(QuantitySummary.with(Unit.MONTHS).n(12).mean(8))),
        study("e", time(QuantitySummary.with(Unit.CENTIMETRES).n(12).mean(8))),
        study("f", report(TIME, value(3, 12)).build()));
    Selection selection = home.selector().select(about(TIME));
    assertEquals(List.of("a", "c", "d"), studies(selection));
    assertEquals(List.of("no-centre", "unit-does-not-fit", "form-does-not-fit"), codes(selection));
  }

  @Test
  void timesOnTheClockOfMostArmsAreTakenAndTheOthersLeftOut() {
    home.keep(
        study("a", time(8, Clock.INJURY)),
        study("b", time(7, Clock.GRAFTING)),
        study("c", time(9, Clock.GRAFTING), time(14, Clock.INJURY)),
        study("d", time(6, Clock.GRAFTING)),
        study("e", time(QuantitySummary.with(Unit.MONTHS).n(12).mean(8).standardDeviation(1))));
    Selection selection = home.selector().select(about(TIME));
    assertEquals(Optional.of(Clock.GRAFTING), selection.clock());
    assertEquals(List.of("b", "c", "d", "e"), studies(selection));
    assertEquals(List.of("different-clock", "different-clock"), codes(selection));
    assertEquals(
        List.of("grafting 3", "injury 2"),
        selection.clocks().stream().map(clock -> clock.code() + " " + clock.arms()).toList());
    assertEquals(List.of("clock-chosen", "clock-not-stated-by-all"), noteCodes(selection));
    Selection asked =
        home.selector()
            .select(new Question(TIME, SearchRequest.EVERYTHING, Optional.of(Clock.INJURY), 5));
    assertEquals(List.of("a", "c"), studies(asked));
  }

  @Test
  void ofClocksEquallyCommonTheOneThatStartsFirstIsTaken() {
    home.keep(study("a", time(8, Clock.GRAFTING)), study("b", time(7, Clock.FIRST_STAGE)));
    assertEquals(Optional.of(Clock.FIRST_STAGE), home.selector().select(about(TIME)).clock());
  }

  @Test
  void whereNoStudySaysItsClockTheRowsStayAndANoteSaysSo() {
    home.keep(
        study("a", time(QuantitySummary.with(Unit.MONTHS).n(12).mean(8).standardDeviation(1))));
    Selection selection = home.selector().select(about(TIME));
    assertEquals(List.of("a"), studies(selection));
    assertEquals(List.of("clock-not-stated"), noteCodes(selection));
  }

  @Test
  void oneStatedClockDoesNotThrowOutFiftyFiveGroupsThatStateNone() {
    List<Study> silent =
        IntStream.range(0, 55).mapToObj(i -> study("s" + i, silentTime(6 + i / 10.0))).toList();
    home.keep(silent.toArray(Study[]::new));
    home.keep(study("stated", time(8, Clock.DEFINITIVE_OPERATION)));
    Selection selection = home.selector().select(about(TIME));
    assertEquals(Optional.of(Clock.DEFINITIVE_OPERATION), selection.clock());
    assertEquals(56, selection.rows().size());
    assertEquals(55, selection.rowsWithoutClock());
    assertEquals(List.of(), selection.leftOut());
    Problem note = selection.notes().get(0);
    assertEquals("clock-not-stated-by-all", note.code());
    assertTrue(note.message().startsWith("55 of 56 groups do not say from when"), note.message());
    Selection off =
        home.selector().select(about(TIME).withUnstatedClock(Optional.of(UnstatedClock.LEAVE_OUT)));
    assertEquals(List.of("stated"), studies(off));
    assertEquals(List.of(), off.notes());
    assertEquals("clock-not-stated", off.leftOut().get(0).code());
    assertEquals(55, off.leftOut().size());
  }

  @Test
  void onlyAStatedOtherClockSetsApart() {
    home.keep(
        study("a", time(8, Clock.INJURY)),
        study("b", time(7, Clock.GRAFTING)),
        study("c", time(9, Clock.GRAFTING)),
        study("d", silentTime(8)));
    assertEquals(List.of("b", "c", "d"), studies(home.selector().select(about(TIME))));
    Question fewer = about(TIME).withClock(Optional.of(Clock.INJURY));
    Selection onFewer = home.selector().select(fewer);
    assertEquals(List.of("a"), studies(onFewer));
    assertEquals(
        "The value does not say from when it is counted; such values stand with those that count"
            + " from grafting or second stage, as most do that say.",
        onFewer.leftOut().get(2).message());
    Selection kept =
        home.selector().select(fewer.withUnstatedClock(Optional.of(UnstatedClock.KEEP)));
    assertEquals(List.of("a", "d"), studies(kept));
  }

  @Test
  void aValueThatSaysItsClockGoesBeforeOneOfTheSameArmThatDoesNot() {
    home.keep(study("a", silentTime(5), time(8, Clock.INJURY), silentTime(9)));
    SelectedRow row = onlyRow(home.selector().select(about(TIME)));
    assertEquals(Optional.of(Clock.INJURY), row.clock());
  }

  @Test
  void aPartOfAWholeTakesTheSilentGroupsThatTheWholeTakes() {
    home.keep(
        study("a", time(8, Clock.INJURY)),
        study("b", time(8, Clock.INJURY)),
        twoArms(
            "c",
            OutcomeReport.with(new Scope.OneArm("A"), TIME, silentTime(7).value()).build(),
            OutcomeReport.with(new Scope.OneArm("B"), TIME, silentTime(7).value())
                .clock(Clock.GRAFTING)
                .build()));
    Selection whole = home.selector().select(about(TIME));
    Question membrane =
        about(TIME).withAmong(SearchRequest.EVERYTHING.withMethods(Set.of("induced-membrane")));
    Selection part = home.selector().select(whole.fixed(membrane));
    assertEquals(List.of("c"), studies(part));
    assertEquals(Optional.of(Clock.INJURY), part.clock());
  }

  @Test
  void costsInTheCurrencyOfMostArmsAreTaken() {
    home.keep(
        study("a", cost("EUR")),
        study("b", cost("USD")),
        study("c", cost("USD")),
        study("d", report(COST, money()).build()));
    Selection selection = home.selector().select(about(COST));
    assertEquals(List.of("b", "c"), studies(selection));
    assertEquals(List.of("different-currency", "different-currency"), codes(selection));
  }

  @Test
  void patientsAreSummedUpWhereTheArmHasNoValue() {
    home.keep(patients("a", 6, 2, 3, 4, 5, 6, 7), patients("b", 20, 2, 3, 4, 5, 6));
    Selection selection = home.selector().select(about(UNION));
    assertEquals(List.of(Basis.FROM_PATIENTS, Basis.FROM_PATIENTS), bases(selection));
    assertEquals(List.of(3, 3), selection.rows().stream().map(SelectorTest::events).toList());
    assertEquals(List.of("patients-described-in-part"), noteCodes(selection));
  }

  @Test
  void aRangeTakesOnlyThePatientsInsideIt() {
    home.keep(patients("a", 8, 2, 3, 4, 5, 6, 7, 8, 9));
    Selection selection = home.selector().select(about(UNION, 4, 8));
    SelectedRow row = onlyRow(selection);
    assertEquals(Basis.FROM_PATIENTS_IN_RANGE, row.basis());
    assertEquals(new ReportedValue.Events(EventCount.of(3, 5)), withoutForm(row.value()));
    assertEquals(OptionalDouble.of(6), row.defect().get().length().centreCentimetres());
  }

  @Test
  void patientsInTheRangeAreTakenBeforeTheArmValueOnlyWhenAllAreDescribed() {
    Study whole =
        patients("a", 8, 2, 3, 4, 5, 6, 7, 8, 9).but().outcomes(List.of(union(8, 8))).build();
    Study inPart =
        patients("b", 30, 2, 3, 4, 5, 6, 7, 8, 9).but().outcomes(List.of(union(8, 30))).build();
    Study inside = patients("c", 5, 4, 5, 6, 7, 8).but().outcomes(List.of(union(5, 5))).build();
    home.keep(whole, inPart, inside);
    Selection selection = home.selector().select(about(UNION, 4, 8));
    assertEquals(
        List.of(Basis.FROM_PATIENTS_IN_RANGE, Basis.REPORTED, Basis.REPORTED), bases(selection));
    assertEquals(List.of("patients-in-range"), codes(selection));
  }

  @Test
  void patientsWithoutALengthAreNotTakenForPatientsInTheRange() {
    Study study = patients("a", 3, 2, 3, 4);
    Arm arm =
        study
            .arms()
            .get(0)
            .but()
            .baseline(
                Baseline.with()
                    .defect(
                        DefectLength.of(
                            QuantitySummary.with(Unit.CENTIMETRES).minimum(2).maximum(30).build()))
                    .build())
            .build();
    home.keep(study.but().arms(List.of(arm)).build());
    Selection selection = home.selector().select(about(UNION, 10, 20));
    assertEquals(List.of(), selection.rows());
    assertEquals(List.of("no-patients-in-range"), codes(selection));
  }

  @Test
  void ofStudiesWithOverlappingPatientsTheLargestStays() {
    home.keep(
        cohort("a", 20, 24, Optional.of("Invented register"), List.of()),
        cohort("b", 30, 12, Optional.of("invented register "), List.of()),
        cohort("c", 40, 12, Optional.empty(), List.of("not-kept")),
        cohort("d", 40, 36, Optional.empty(), List.of("not-kept")),
        cohort("e", 10, 12, Optional.empty(), List.of()),
        cohort("f", 10, 12, Optional.empty(), List.of("e")));
    Selection selection = home.selector().select(about(UNION));
    assertEquals(List.of("b", "d", "e"), studies(selection));
    assertEquals(
        List.of("overlapping-cohort", "overlapping-cohort", "overlapping-cohort"),
        codes(selection));
  }

  @Test
  void retractedReportsAndRecordsTooEarlyAreLeftOut() {
    home.keep(
        study("a", union(11, 12)).but().reportKind(ReportKind.RETRACTION).build(),
        study("b", union(11, 12)).but().status(ExtractionStatus.DRAFT).build(),
        study("c", union(11, 12)).but().status(ExtractionStatus.VERIFIED).build());
    assertEquals(List.of("b", "c"), studies(home.selector().select(about(UNION))));
    Selection verified =
        home.selector()
            .select(
                new Question(
                    UNION,
                    SearchRequest.EVERYTHING,
                    Optional.empty(),
                    5,
                    Optional.of(ExtractionStatus.EXTRACTED)));
    assertEquals(List.of("c"), studies(verified));
    assertEquals(List.of("retracted", "status-too-early"), codes(verified));
  }

  @Test
  void aGroupThatIsKeptApartIsShownAndNeverPooled() {
    Study failures = study("b", union(2, 12));
    Arm apart =
        failures
            .arms()
            .get(0)
            .but()
            .keptApart(
                new KeptApart(
                    ApartReason.SELECTED_ON_OUTCOME, Optional.of("those in whom transport failed")))
            .build();
    home.keep(study("a", union(11, 12)), failures.but().arms(List.of(apart)).build());
    Selection selection = home.selector().select(about(UNION));
    assertEquals(List.of("a"), studies(selection));
    assertEquals(List.of("kept-apart"), codes(selection));
    assertEquals(
        "The group is kept apart and never pooled: chosen by what became of them (those in whom"
            + " transport failed).",
        selection.leftOut().get(0).message());
    assertEquals(
        List.of("a", "b"),
        home
            .selector()
            .rowsOf(about(UNION), List.of(new ArmHit("a", "A"), new ArmHit("b", "A")))
            .stream()
            .map(row -> row.study().id())
            .toList());
  }

  @Test
  void recordsReadSecondHandAndSuspectedOverlapsAreCountedInNotes() {
    home.keep(
        study("a", union(11, 12)).but().readAs(ReadAs.SECOND_HAND).build(),
        study("b", union(10, 12)).but().overlapSuspectedWith(List.of("a")).build(),
        study("c", union(9, 12)).but().readAs(ReadAs.ABSTRACT).build());
    Selection selection = home.selector().select(about(UNION));
    assertEquals(List.of("a", "b", "c"), studies(selection));
    assertEquals(List.of("read-second-hand", "overlap-suspected"), noteCodes(selection));
    assertEquals(
        "1 of 3 groups was read second-hand, in another paper that tells of it; its numbers were"
            + " not seen where it was published.",
        selection.notes().get(0).message());
    assertEquals(
        "1 of 3 groups may share patients with another study here, which its record suspects; if"
            + " so, patients count twice.",
        selection.notes().get(1).message());
  }

  @Test
  void ofStudiesThatMaySharePatientsTheOneWithTheMostStaysWhereThatIsAsked() {
    home.keep(
        study("a", union(11, 12)),
        study("b", union(10, 14)).but().overlapSuspectedWith(List.of("a", "not-kept")).build(),
        study("c", union(9, 12)).but().overlapSuspectedWith(List.of("not-kept")).build());
    Selection selection =
        home.selector().select(about(UNION).withSuspectedOverlap(SuspectedOverlap.LEAVE_OUT));
    assertEquals(List.of("b", "c"), studies(selection));
    assertEquals(List.of("overlap-left-out"), codes(selection));
    assertTrue(selection.leftOut().get(0).message().startsWith("A record suspects that"));
    assertEquals(List.of(), noteCodes(selection));
  }

  @Test
  void rowsOfTooFewPatientsAreLeftOut() {
    home.keep(study("a", union(4, 4)), study("b", union(5, 5)));
    Selection selection = home.selector().select(about(UNION));
    assertEquals(List.of("b"), studies(selection));
    assertEquals(List.of("too-few-patients"), codes(selection));
  }

  @Test
  void limbsCountedBesidePatientsAreNoted() {
    home.keep(
        study("a", events(5, 6).counted(CountedUnit.LIMBS).build()),
        study("b", events(5, 6).counted(CountedUnit.PATIENTS).build()));
    assertEquals(
        List.of("limbs-and-patients-mixed"), noteCodes(home.selector().select(about(UNION))));
  }

  @Test
  void armsThatDoNotReportTheOutcomeAreNotSpokenOf() {
    home.keep(study("a", union(5, 6)));
    Selection selection = home.selector().select(about(Outcome.of("refracture")));
    assertEquals(List.of(), selection.rows());
    assertEquals(List.of(), selection.leftOut());
  }

  @Test
  void onlyRowsOfTheDefinitionAskedForAreTaken() {
    home.keep(
        study("a", events(5, 6).definition("bridging of three of four cortices").build()),
        study("b", events(5, 6).definition("walking without pain").build()),
        study("c", events(5, 6).build()),
        study(
            "d", events(5, 6).definition("3 of 4 cortices bridged, walking without pain").build()),
        study("e", events(5, 6).definition("as judged at the meeting").build()));
    assertEquals(List.of("a", "d"), studies(defined("three-cortices")));
    assertEquals(List.of("b", "d"), studies(defined("walking-without-pain")));
    assertEquals(List.of("c"), studies(defined("not-said")));
    assertEquals(List.of("e"), studies(defined("other-words")));
    Selection cortices = defined("three-cortices");
    assertEquals(
        List.of("different-definition", "different-definition", "different-definition"),
        codes(cortices));
    assertEquals(
        List.of(
            "It defines the outcome as “walking without pain”.",
            "It does not say how it defines the outcome.",
            "It defines the outcome as “as judged at the meeting”."),
        cortices.leftOut().stream().map(LeftOut::message).toList());
  }

  private Selection defined(String code) {
    return home.selector().select(about(UNION).withDefinition(DefinitionAsked.find(code)));
  }

  @Test
  void theKindThatAPersonChoseGoesBeforeWhatTheWordsSeemToSay() {
    home.keep(
        study(
            "a",
            events(5, 6)
                .definition("three cortices")
                .definitionKinds(List.of(DefinitionKind.of("frame-off")))
                .build()),
        study(
            "b", events(5, 6).definitionKinds(List.of(DefinitionKind.of("two-cortices"))).build()));
    assertEquals(List.of("a"), studies(defined("frame-off")));
    Selection cortices = defined("three-cortices");
    assertEquals(List.of(), studies(cortices));
    assertEquals(
        "It defines the outcome by: bridging of two cortices.",
        cortices.leftOut().get(1).message());
  }

  @Test
  void definitionsAreOfferedWithTheirNumberOfRows() {
    home.keep(
        study("a", union(5, 6)).but().unionDefinition("three cortices").build(),
        study("b", events(5, 6).definition("three cortices").build()),
        study("c", events(5, 6).definition("walking without pain").build())
            .but()
            .unionDefinition("three cortices")
            .build(),
        study("d", union(5, 6)),
        study("e", union(5, 6)),
        study("f", union(5, 6)));
    Selection selection = home.selector().select(about(UNION));
    assertEquals(
        List.of("three-cortices 2", "walking-without-pain 1", "not-said 3"),
        selection.definitions().stream().map(d -> d.code() + " " + d.arms()).toList());
  }

  @Test
  void seriesThatDefineTheOutcomeInSeveralWaysAreSaidToMixThem() {
    home.keep(
        study("a", events(5, 6).definition("three cortices").build()),
        study("b", events(5, 6).definition("walking without pain").build()),
        study("c", events(5, 6).build()));
    Selection mixed = home.selector().select(about(UNION));
    assertEquals(List.of("a", "b", "c"), studies(mixed));
    assertEquals(List.of("definitions-mixed"), noteCodes(mixed));
    String message = mixed.notes().get(0).message();
    assertTrue(message.startsWith("The 3 groups do not all define this outcome alike"), message);
    assertTrue(
        message.contains(
            "bridging of three of four cortices (1); walking without pain (1); not said (1)"),
        message);
    assertEquals(List.of(), noteCodes(defined("three-cortices")));
  }

  @Test
  void seriesThatAskForTheSameTwoThingsDoNotMixDefinitions() {
    home.keep(
        study("a", events(5, 6).definition("three cortices, walking without pain").build()),
        study("b", events(5, 6).definition("walks without pain; 3 of 4 cortices").build()));
    Selection alike = home.selector().select(about(UNION));
    assertTrue(alike.alikeDefined());
    assertEquals(List.of(), noteCodes(alike));
  }

  @Test
  void thatAnyWordOfTheSearchWasEnoughIsNoted() {
    home.keep(study("a", union(5, 6)));
    SearchRequest words = SearchRequest.EVERYTHING.withText("invented xyzzyqwert");
    Selection selection = home.selector().select(about(UNION).withAmong(words));
    assertEquals(List.of("a"), studies(selection));
    assertEquals(List.of("not-all-words-found"), noteCodes(selection));
    assertTrue(selection.notes().get(0).message().contains("nowhere here: “xyzzyqwert”"));
  }

  @Test
  void rowsInsideARangeAreToldFromThoseThatOnlyReachIntoIt() {
    home.keep(withDefect("a", 5, 3, 9), withDefect("b", 8, 3, 12), withDefect("c", 20, 18, 25));
    Selection selection = home.selector().select(about(UNION, 4, 6));
    assertEquals(List.of("a", "b"), studies(selection));
    assertEquals(1, selection.rowsWithCentreInside());
    assertEquals(1, selection.rowsOnlyOverlapping());
  }

  @Test
  void theHashIsThatOfTheRecordsReadWhateverTheirHistory(@TempDir Path elsewhere) {
    home.keep(study("a", union(5, 6)), study("b", union(5, 7)));
    String first = home.selector().select(about(UNION)).dataSha256();
    assertTrue(first.matches("[0-9a-f]{64}"), first);
    try (Home other = new Home(elsewhere)) {
      other.keep(study("b", union(1, 7)), study("c", time(8, Clock.INJURY)));
      other.keep(study("b", union(5, 7)), study("a", union(5, 6)));
      Selection selection = other.selector().select(about(UNION));
      assertEquals(first, selection.dataSha256());
      assertEquals(2, selection.rows().get(1).studyVersion());
    }
    home.keep(study("a", union(6, 6)));
    assertNotEquals(first, home.selector().select(about(UNION)).dataSha256());
  }

  private static Question about(Outcome outcome) {
    return Question.about(outcome, SearchRequest.EVERYTHING);
  }

  private static Question about(Outcome outcome, double from, double to) {
    SearchRequest e = SearchRequest.EVERYTHING;
    SearchRequest among =
        SearchRequest.EVERYTHING.withDefect(
            new LengthRange(from, to), SearchRequest.DefectMatch.OVERLAP);
    return Question.about(outcome, among);
  }

  /** A study of one arm of 12 with defects of 1 to 30 cm. */
  private static Study study(String id, OutcomeReport... reports) {
    return withDefect(id, 5, 1, 30).but().outcomes(List.of(reports)).build();
  }

  private static Study withDefect(String id, double mean, double least, double most) {
    DefectLength defect =
        DefectLength.of(
            QuantitySummary.with(Unit.CENTIMETRES).mean(mean).minimum(least).maximum(most).build());
    Arm arm =
        Arm.with("A", MethodUsed.of(Method.of("bone-transport")))
            .baseline(Baseline.with().patients(12).defect(defect).build())
            .build();
    return Study.with(id, Citation.with("Invented study " + id).year(2001).build())
        .invented(true)
        .arms(List.of(arm))
        .outcomes(List.of(union(11, 12)))
        .build();
  }

  private static OutcomeReport silentTime(double months) {
    return time(QuantitySummary.with(Unit.MONTHS).n(12).mean(months).standardDeviation(1));
  }

  private static Study twoArms(String id, OutcomeReport... reports) {
    MethodUsed method = MethodUsed.of(Method.of("induced-membrane"));
    return study(id)
        .but()
        .arms(List.of(Arm.with("A", method).build(), Arm.with("B", method).build()))
        .outcomes(List.of(reports))
        .build();
  }

  /** An arm known by patients with these lengths in centimetres; those of even length united. */
  private static Study patients(String id, int treated, int... lengths) {
    List<PatientRow> rows =
        Arrays.stream(lengths)
            .mapToObj(
                length -> {
                  TreeMap<String, PatientOutcome> outcomes = new TreeMap<>();
                  YesOrNo united = length % 2 == 0 ? YesOrNo.YES : YesOrNo.NO;
                  outcomes.put("union", new PatientOutcome.Happened(united));
                  return PatientRow.with("case " + length, "A")
                      .defect(new Length(length, Unit.CENTIMETRES, false))
                      .outcomes(outcomes)
                      .build();
                })
            .toList();
    Arm arm =
        Arm.with("A", MethodUsed.of(Method.of("autograft")))
            .baseline(Baseline.with().patients(treated).build())
            .build();
    return study(id).but().arms(List.of(arm)).outcomes(List.of()).patients(rows).build();
  }

  private static Study cohort(
      String id, int total, double followUpMonths, Optional<String> cohort, List<String> same) {
    Arm arm =
        Arm.with("A", MethodUsed.of(Method.of("autograft")))
            .baseline(
                Baseline.with()
                    .followUp(QuantitySummary.with(Unit.MONTHS).mean(followUpMonths).build())
                    .build())
            .build();
    StudyBuilder study =
        study(id, union(total - 1, total)).but().arms(List.of(arm)).sameStudyAs(same);
    cohort.ifPresent(study::cohort);
    return study.build();
  }

  private static OutcomeReport.Builder report(Outcome outcome, ReportedValue value) {
    return OutcomeReport.with(new Scope.OneArm("A"), outcome, value);
  }

  private static ReportedValue value(int events, int total) {
    return new ReportedValue.Events(EventCount.of(events, total));
  }

  private static OutcomeReport.Builder events(int events, int total) {
    return report(UNION, value(events, total));
  }

  private static OutcomeReport union(int events, int total) {
    return events(events, total).build();
  }

  private static OutcomeReport percent(double percent, int total) {
    return report(
            UNION,
            new ReportedValue.Events(
                new EventCount(
                    OptionalInt.empty(), OptionalInt.of(total), OptionalDouble.of(percent), false)))
        .build();
  }

  private static OutcomeReport time(QuantitySummaryBuilder summary) {
    return report(TIME, new ReportedValue.Quantity(summary.build())).build();
  }

  private static OutcomeReport time(double months, Clock clock) {
    QuantitySummary summary =
        QuantitySummary.with(Unit.MONTHS).n(12).mean(months).standardDeviation(2).build();
    return report(TIME, new ReportedValue.Quantity(summary)).clock(clock).build();
  }

  private static OutcomeReport cost(String currency) {
    return report(COST, money())
        .money(new Money(Currency.getInstance(currency), OptionalInt.empty()))
        .build();
  }

  private static ReportedValue money() {
    return new ReportedValue.Quantity(
        QuantitySummary.with(Unit.CURRENCY).n(12).mean(9000).standardDeviation(2000).build());
  }

  private static Subgroup band(double from, double to) {
    return new Subgroup(from + " to " + to + " cm", OptionalDouble.of(from), OptionalDouble.of(to));
  }

  private static SelectedRow onlyRow(Selection selection) {
    assertEquals(1, selection.rows().size(), () -> selection.rows() + " " + selection.leftOut());
    return selection.rows().get(0);
  }

  private static int events(SelectedRow row) {
    return ((ReportedValue.Events) row.value()).count().events().getAsInt();
  }

  private static ReportedValue withoutForm(ReportedValue value) {
    EventCount count = ((ReportedValue.Events) value).count();
    return value(count.events().getAsInt(), count.total().getAsInt());
  }

  private static List<String> studies(Selection selection) {
    return selection.rows().stream().map(row -> row.study().id()).toList();
  }

  private static List<Basis> bases(Selection selection) {
    return selection.rows().stream().map(SelectedRow::basis).toList();
  }

  private static List<String> codes(Selection selection) {
    return selection.leftOut().stream().map(LeftOut::code).toList();
  }

  private static List<String> noteCodes(Selection selection) {
    return selection.notes().stream().map(Problem::code).toList();
  }
}
