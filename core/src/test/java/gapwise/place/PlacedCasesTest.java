package gapwise.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.answer.Edition;
import gapwise.evidence.unit.Duration;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Phase;
import gapwise.figure.timeline.Timeline;
import gapwise.place.MethodPlace.ByLength;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Shares against restricted maximum likelihood by NumPy and a scalar search of SciPy 1.17.1, with
 * {@code scipy.stats.t.cdf}; counts by hand.
 */
class PlacedCasesTest {
  @TempDir private static Path home;
  private static InventedSeries series;

  @BeforeAll
  static void open() {
    series = InventedSeries.open(home);
  }

  @AfterAll
  static void close() {
    series.close();
  }

  private static PatientCase unionAt(double months, Clock clock, OptionalDouble centimetres) {
    return new PatientCase(
        Optional.of(Method.of("bone-transport")),
        centimetres,
        Optional.empty(),
        Optional.empty(),
        PatientCase.Infection.UNSAID,
        List.of(Reached.at(Milestone.UNION, months, clock)),
        Course.NONE);
  }

  private static PlacedMilestone placed(double months, Clock clock, OptionalDouble centimetres) {
    return series.cases().place(unionAt(months, clock, centimetres)).milestones().get(0);
  }

  private static MethodPlace own(double months, OptionalDouble centimetres) {
    MethodPlace place = placed(months, Clock.FRAME_ON, centimetres).methods().get(0);
    assertTrue(place.own());
    return place;
  }

  @Test
  void theShareIsThatOfThePredictiveDistributionOfTheSeriesOnTheSameClock() {
    MethodPlace place = own(9, OptionalDouble.empty());
    // By Student's t on k - 2 about the mean of random effects it was 0.4596.
    assertEquals(0.4604430208495236, place.newBelow().orElseThrow(), 1e-6);
    assertEquals(12, place.series());
    assertEquals(252, Integer.parseInt(place.people().split(" ")[0]));
    assertEquals(6, place.seriesBelow());
    assertEquals(Optional.of(new MethodPlace.Below(1, 1)), place.unpooled());
  }

  @Test
  void withTenLengthsAndMoreTheShareIsThatOfSeriesWithAsLongADefect() {
    MethodPlace place = own(10, OptionalDouble.of(8));
    ByLength.Adjusted adjusted = assertInstanceOf(ByLength.Adjusted.class, place.length());
    assertEquals(0.10878075425659472, adjusted.newBelow(), 1e-6);
    assertEquals(12, adjusted.series());
    String sentence = CaseWords.sentence(Reached.at(Milestone.UNION, 10, Clock.FRAME_ON), place);
    assertEquals(
        "Earlier than about 9 in 10 new series of bone transport would be expected to report with"
            + " as long a defect on average. From 12 series, 252 patients.",
        sentence);
  }

  @Test
  void outsideTheLengthsOfTheSeriesNoAdjustedNumberIsTold() {
    MethodPlace place = own(10, OptionalDouble.of(14));
    ByLength.NotAdjusted not = assertInstanceOf(ByLength.NotAdjusted.class, place.length());
    assertTrue(not.why().contains("14 cm lies outside"), not.why());
    assertTrue(not.why().contains("4 to 9.5 cm"), not.why());
  }

  @Test
  void twoSeriesTellAShareAndOneDoesNot() {
    PlacedMilestone placed = placed(9, Clock.FRAME_ON, OptionalDouble.of(8));
    MethodPlace two =
        placed.methods().stream()
            .filter(one -> one.method().code().equals("autograft"))
            .findFirst()
            .orElseThrow();
    assertTrue(two.told().isPresent());
    MethodPlace few =
        placed.methods().stream()
            .filter(one -> one.method().code().equals("allograft"))
            .findFirst()
            .orElseThrow();
    assertTrue(few.told().isEmpty());
    assertTrue(CaseWords.sentence(placed.reached(), few).startsWith("Too few to say: 1 series"));
  }

  @Test
  void underTenSeriesTheShareIsNotAdjustedAndThatIsSaid() {
    PlacedMilestone placed = placed(9, Clock.GRAFTING, OptionalDouble.of(6));
    MethodPlace membrane = placed.methods().get(0);
    assertEquals("induced-membrane", membrane.method().code());
    ByLength.NotAdjusted not = assertInstanceOf(ByLength.NotAdjusted.class, membrane.length());
    assertTrue(not.why().contains("4 of 4 series give one"), not.why());
  }

  @Test
  void seriesOnOtherClocksNeverStandBesideTheCase() {
    PlacedMilestone grafting = placed(9, Clock.GRAFTING, OptionalDouble.empty());
    assertEquals(List.of("induced-membrane"), codes(grafting));
    PlacedMilestone injury = placed(9, Clock.INJURY, OptionalDouble.empty());
    assertEquals(List.of(), codes(injury));
    assertTrue(injury.notes().get(0).contains("16 from frame put on"), injury.notes()::toString);
  }

  @Test
  void aCaseStandsBesideGroupsThatDoNotSayTheirClockWhereMostThatSayCountAsItDoes(
      @TempDir Path other) {
    try (InventedSeries mixed = InventedSeries.mostlySilent(other)) {
      PlacedMilestone grafting =
          mixed
              .cases()
              .place(unionAt(9, Clock.GRAFTING, OptionalDouble.empty()))
              .milestones()
              .get(0);
      assertEquals(6, grafting.methods().get(0).series());
      assertTrue(
          grafting
              .notes()
              .contains(
                  "5 of 6 groups do not say from when they count this. They are taken with those that"
                      + " count from the same moment as the case, and may count from another."),
          grafting.notes()::toString);
      PlacedMilestone injury =
          mixed.cases().place(unionAt(9, Clock.INJURY, OptionalDouble.empty())).milestones().get(0);
      assertEquals(List.of(), codes(injury));
    }
  }

  private static List<String> codes(PlacedMilestone placed) {
    return placed.methods().stream().map(place -> place.method().code()).toList();
  }

  @Test
  void aLaterTimeIsSaidToBeLaterAndTheMiddleToBeTheMiddle() {
    Reached late = Reached.at(Milestone.UNION, 40, Clock.FRAME_ON);
    String words = CaseWords.sentence(late, own(40, OptionalDouble.empty()));
    assertTrue(words.startsWith("Later than nearly all new series"), words);
    assertTrue(words.contains("fewer than 1 in 20 would report as late a time"), words);
    Reached middle = Reached.at(Milestone.UNION, 9.2, Clock.FRAME_ON);
    assertTrue(
        CaseWords.sentence(middle, own(9.2, OptionalDouble.empty()))
            .startsWith("About the middle of what new series"));
  }

  @Test
  void costsInAnotherCurrencyAndMilestonesWithoutSeriesAreNotComparedAndSaySo() {
    PatientCase patientCase =
        new PatientCase(
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            PatientCase.Infection.ACTIVE,
            List.of(Reached.cost(45_000, "EUR")),
            Course.NONE);
    PlacedCase placed = series.cases().place(patientCase);
    assertTrue(placed.milestones().get(0).methods().isEmpty());
    assertTrue(placed.milestones().get(0).notes().get(0).contains("reports a cost"));
    assertTrue(CaseTimeline.of(placed, Edition.ofProgram("test")).isEmpty());
  }

  @Test
  void aCourseOfPhasesHasOneTrackForEachClockWithItsPhasesCountedFromThere() {
    Course course =
        new Course(
            Optional.of(Clock.INJURY),
            List.of(
                new Stay(Phase.TEMPORARY_FRAME, Duration.ofMonths(2)),
                new Stay(Phase.IN_FRAME, Duration.ofMonths(9)),
                new Stay(Phase.UNSUPPORTED, Duration.ofMonths(4))));
    PatientCase patientCase =
        new PatientCase(
            Optional.of(Method.of("bone-transport")),
            OptionalDouble.of(8),
            Optional.empty(),
            Optional.empty(),
            PatientCase.Infection.UNSAID,
            List.of(Reached.at(Milestone.UNION, 8, Clock.FRAME_ON)),
            course);
    PlacedCase placed = series.cases().place(patientCase);
    Timeline timeline = CaseTimeline.of(placed, Edition.ofProgram("test")).orElseThrow();
    assertEquals(
        List.of("injury", "frame put on"),
        timeline.tracks().stream().map(Timeline.Track::origin).toList());
    Timeline.Track frame = timeline.tracks().get(1);
    assertEquals(-2, frame.course().get(0).fromMonths(), 1e-12);
    assertEquals(9, frame.course().get(1).toMonths(), 1e-12);
    assertEquals(3, frame.pooled().size());
    assertTrue(timeline.provenance().demonstration());
  }

  @Test
  void aTimeThatThePhasesContradictIsTakenAndNamed() {
    Course course =
        new Course(Optional.empty(), List.of(new Stay(Phase.IN_FRAME, Duration.ofMonths(10))));
    PatientCase patientCase =
        new PatientCase(
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            PatientCase.Infection.UNSAID,
            List.of(Reached.at(Milestone.FRAME_OFF, 9, Clock.FRAME_ON)),
            course);
    assertEquals("contradicts-course", patientCase.contradictions().get(0).code());
    assertEquals(9, patientCase.reached().get(0).value());
    assertEquals(
        1,
        patientCase.reached().stream().filter(r -> r.milestone() == Milestone.FRAME_OFF).count());
  }

  @Test
  void oneSeriesIsToldInTheSingular() {
    String one = CaseWords.tooFewLengths(1, 4);
    assertTrue(one.contains(": 1 of 4 series gives one, and a line takes 10."), one);
  }

  @Test
  void aMethodOfTwoSeriesIsToldInAPhrase() {
    PlacedMilestone placed = placed(9, Clock.FRAME_ON, OptionalDouble.empty());
    String few = CaseWords.tooFew(placed.reached(), placed.methods().get(1));
    assertTrue(few.endsWith("of them with an earlier average"), few);
  }
}
