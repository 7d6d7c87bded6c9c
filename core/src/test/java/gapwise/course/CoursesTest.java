package gapwise.course;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.answer.Edition;
import gapwise.curation.EvidenceBase;
import gapwise.demonstration.DemonstrationEvidence;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.Provenance;
import gapwise.evidence.PublishedCurve;
import gapwise.evidence.PublishedCurve.AtRisk;
import gapwise.evidence.PublishedCurve.Point;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.CurveShows;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.curve.CurveFigure;
import gapwise.figure.value.Limits;
import gapwise.search.SearchRequest;
import gapwise.search.StudyIndex;
import gapwise.selection.LeftOut;
import gapwise.selection.Question;
import gapwise.selection.Selector;
import gapwise.store.DocumentStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Curves of the demonstration and of a worked example, answered and run again from files. */
class CoursesTest {
  private static final Outcome UNION = Outcome.of("time-to-union");

  @TempDir Path home;

  private void with(List<Study> studies, Consumer<Courses> test) {
    selecting(studies, selector -> test.accept(new Courses(selector, selector::select)));
  }

  private void selecting(List<Study> studies, Consumer<Selector> test) {
    DocumentStore store = DocumentStore.open(home, java.time.Clock.systemUTC());
    try (StudyIndex search =
        StudyIndex.open(home.resolve("index"), store, EvidenceBase.STUDY, message -> {})) {
      EvidenceBase base = new EvidenceBase(store);
      base.saveAll(studies.iterator(), "a reviewer", "invented", List.of());
      test.accept(new Selector(search.shown(), base.latest()));
    } finally {
      store.close();
    }
  }

  private static Question from(Clock clock) {
    return new Question(UNION, SearchRequest.EVERYTHING, Optional.of(clock), 5);
  }

  private static List<String> methods(CourseAnswer answer) {
    return answer.methods().stream().map(one -> one.method().code()).toList();
  }

  private static MethodCourse of(CourseAnswer answer, String method) {
    return answer.methods().stream()
        .filter(one -> one.method().equals(Method.of(method)))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void curvesOfTheDemonstrationArePooledByMethod() {
    with(
        DemonstrationEvidence.studies(),
        courses -> {
          CourseAnswer answer = courses.ask(from(Clock.FRAME_ON), 12);
          assertEquals(List.of("bone-transport", "acute-shortening-lengthening"), methods(answer));
          MethodCourse transport = of(answer, "bone-transport");
          assertTrue(transport.pooled().isPresent());
          // Studies 02 and 03 are of one cohort, so that one of them gives way.
          assertEquals(
              transport.curves().size(),
              transport.curves().stream().map(one -> one.row().study().cohort()).distinct().count()
                  + transport.curves().stream()
                      .filter(one -> one.row().study().cohort().isEmpty())
                      .count()
                  - 1);
          assertTrue(
              answer.leftOut().stream().anyMatch(one -> one.code().equals("overlapping-cohort")));
          assertTrue(answer.leftOut().stream().anyMatch(one -> one.code().equals("no-curve")));
          assertTrue(
              answer.leftOut().stream().anyMatch(one -> one.code().equals("different-clock")));
          for (MethodCourse method : answer.methods()) {
            double before = 0;
            for (int month : CoursePlan.MONTHS) {
              Optional<ShareBy> by = method.by(month);
              assertTrue(by.isEmpty() || by.get().share() >= before, method.method().code());
              before = by.map(ShareBy::share).orElse(before);
            }
            double mean = method.restrictedMean().orElseThrow().months();
            assertTrue(mean > 0 && mean <= 12, "restricted mean " + mean);
          }
          CourseAnswer grafted = courses.ask(from(Clock.GRAFTING), 12);
          assertTrue(methods(grafted).contains("induced-membrane"), methods(grafted).toString());
        });
  }

  @Test
  void thePooledNumbersAreThoseOfThePlanRunFromFiles() {
    with(
        DemonstrationEvidence.studies(),
        courses -> {
          MethodCourse transport = of(courses.ask(from(Clock.FRAME_ON), 12), "bone-transport");
          PlanOutcome again =
              Runner.withoutEvidence().run(onFiles(transport.plan()).toString(), Optional.of(home));
          JsonNode pooled = ((PlanOutcome.Done) again).json().at("/pooledCurves/0");
          assertTrue(pooled.isObject(), "the result has no pooled curve");
          int told = 0;
          for (JsonNode at : pooled.get("times")) {
            Optional<ShareBy> by = transport.by(at.get("time").asInt());
            assertEquals(1 - at.get("survival").asDouble(), by.orElseThrow().share(), 1e-12);
            told++;
          }
          assertEquals(transport.pooled().orElseThrow().times().size(), told);
        });
  }

  /** The same plan with its rows in tables beside it, as a person would have them. */
  private ObjectNode onFiles(ObjectNode plan) {
    ObjectNode copy = plan.deepCopy();
    table(copy.get("source").get("rows"), "points.csv", List.of("group", "time", "survival"));
    copy.putObject("source").put("table", "points.csv");
    ObjectNode numbers = (ObjectNode) copy.get("numbersAtRisk");
    table(numbers.get("rows"), "at-risk.csv", List.of("group", "time", "atRisk"));
    numbers.remove("rows");
    numbers.put("table", "at-risk.csv");
    return copy;
  }

  private void table(JsonNode rows, String file, List<String> columns) {
    List<String> lines = new ArrayList<>(List.of(String.join(",", columns)));
    for (JsonNode row : rows) {
      List<String> cells = new ArrayList<>();
      columns.forEach(column -> cells.add("\"" + row.get(column).asText() + "\""));
      lines.add(String.join(",", cells));
    }
    try {
      Files.write(home.resolve(file), lines);
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /**
   * Remission under 6-mercaptopurine, 21 children with 9 relapses (Freireich et al., Blood
   * 1963;21:699, worked by Kaplan and Meier's product in textbooks of survival analysis; numbers
   * from memory): relapse of 3 at week 6 and of one each at 7, 10, 13, 16, 22, 23; last seen at 6,
   * 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35. Weeks stand as months here.
   */
  private static Study remission() {
    PublishedCurve curve =
        new PublishedCurve(
            "A",
            UNION,
            Unit.MONTHS,
            CurveShows.WITHOUT_EVENT,
            List.of(
                new Point(0, 100),
                new Point(6, 85.71),
                new Point(7, 80.67),
                new Point(10, 75.29),
                new Point(13, 69.02),
                new Point(16, 62.75),
                new Point(22, 53.78),
                new Point(23, 44.82),
                new Point(35, 44.82)),
            List.of(
                new AtRisk(0, 21),
                new AtRisk(6, 21),
                new AtRisk(7, 17),
                new AtRisk(10, 15),
                new AtRisk(13, 12),
                new AtRisk(16, 11),
                new AtRisk(22, 7),
                new AtRisk(23, 6)),
            List.of(),
            new PublishedCurve.Totals(OptionalInt.of(21), OptionalInt.of(9), OptionalDouble.of(23)),
            Optional.empty(),
            Provenance.NOWHERE,
            new TreeMap<>(),
            Optional.empty());
    Arm arm =
        Arm.with("A", MethodUsed.of(Method.of("bone-transport")))
            .baseline(Baseline.with().patients(21).build())
            .build();
    return Study.with("worked", Citation.with("Invented series of a worked example").build())
        .arms(List.of(arm))
        .curves(List.of(curve))
        .build();
  }

  @Test
  void oneCurveIsToldAsItIsByKaplanAndMeier() {
    with(
        List.of(remission()),
        courses -> {
          CourseAnswer answer =
              courses.ask(new Question(UNION, SearchRequest.EVERYTHING, Optional.empty(), 5), 12);
          MethodCourse one = of(answer, "bone-transport");
          assertTrue(one.pooled().isEmpty());
          // 1 less 18/21, 18/21 x 16/17 and 18/21 x 16/17 x 14/15; to the third decimal.
          assertEquals(0.143, one.by(6).orElseThrow().share(), 5e-4);
          assertEquals(0.193, one.by(9).orElseThrow().share(), 5e-4);
          assertEquals(0.247, one.by(12).orElseThrow().share(), 5e-4);
          // 0.7529 to exp(+-1.96 x 0.0963 / 0.7529 / 0.2838) by hand: 0.5032 to 0.8894.
          Limits limits = one.by(12).orElseThrow().limits().orElseThrow();
          assertEquals(1 - 0.8894, limits.lower(), 1e-3);
          assertEquals(1 - 0.5032, limits.upper(), 1e-3);
          // 6 + 1 x .8571 + 3 x .8067 + 2 x .7529, by hand.
          assertEquals(10.783, one.restrictedMean().orElseThrow().months(), 5e-3);
          assertTrue(CourseTold.sentence(one, "had united").contains("the one curve there is"));
          CurveFigure figure = CourseFigure.of(answer, Edition.ofProgram("test")).orElseThrow();
          assertEquals(1, figure.curves().size());
          assertTrue(figure.curves().get(0).steps().get(0).limits().isPresent());
        });
  }

  @Test
  void anArmWithACurveAloneHasNoPlaceAmongMeansAndSaysSo() {
    selecting(
        List.of(remission()),
        selector -> {
          Question question = new Question(UNION, SearchRequest.EVERYTHING, Optional.empty(), 5);
          assertEquals(List.of(), selector.select(question).rows());
          assertEquals(
              List.of("curve-alone"),
              selector.select(question).leftOut().stream().map(LeftOut::code).toList());
          Courses courses = new Courses(selector, selector::select);
          CourseAnswer answer = courses.ask(question, 12);
          assertEquals(List.of(), answer.leftOut().stream().map(LeftOut::code).toList());
          assertEquals(1, answer.curves().size());
          assertEquals(21, answer.curves().get(0).patients());
        });
  }

  @Test
  void nothingIsInventedWhereNoCurveStands() {
    List<Study> none =
        DemonstrationEvidence.studies().stream()
            .map(study -> study.but().curves(List.of()).build())
            .toList();
    with(
        none,
        courses -> {
          CourseAnswer answer = courses.ask(from(Clock.FRAME_ON), 12);
          assertEquals(List.of(), answer.methods());
          assertTrue(answer.leftOut().stream().allMatch(one -> one.code().equals("no-curve")));
          assertTrue(CourseFigure.of(answer, Edition.ofProgram("test")).isEmpty());
        });
  }

  @Test
  void theRecordIsSeenOtherwiseAndNotChanged() {
    Study study =
        DemonstrationEvidence.studies().stream()
            .filter(one -> !one.curves().isEmpty())
            .findFirst()
            .orElseThrow();
    Study seen = new CurvesInPlace(UNION).apply(study);
    assertEquals(study.curves(), seen.curves());
    List<OutcomeReport> ofTime =
        seen.outcomes().stream().filter(one -> one.outcome().equals(UNION)).toList();
    assertEquals(study.curves().size(), ofTime.size());
    assertEquals(
        study.outcomes().stream()
            .filter(one -> one.outcome().equals(UNION))
            .findFirst()
            .orElseThrow()
            .clock(),
        ofTime.get(0).clock());
  }
}
