package gapwise.analysis.rows;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.QuestionPlan;
import gapwise.analysis.Runner;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.curation.EvidenceBase;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
import gapwise.evidence.Detail;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.QuantitySummaryBuilder;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.MethodDetail;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.search.HowMade;
import gapwise.search.SearchRequest;
import gapwise.search.SearchRequest.DefectMatch;
import gapwise.search.StudyIndex;
import gapwise.search.YearRange;
import gapwise.selection.Question;
import gapwise.selection.QuestionJson;
import gapwise.selection.Selector;
import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The bridge between the wings, over a real store and index. All studies are invented. */
class SelectionRowsTest {
  @TempDir Path home;
  private DocumentStore store;
  private StudyIndex search;
  private EvidenceBase base;

  @BeforeEach
  void open() {
    store = DocumentStore.open(home, Clock.systemUTC());
    search = StudyIndex.open(home.resolve("index"), store, EvidenceBase.STUDY, message -> {});
    base = new EvidenceBase(store);
  }

  @AfterEach
  void close() {
    search.close();
    store.close();
  }

  private void save(String id, String method, double defectCentimetres, OutcomeReport... reports) {
    Arm arm =
        Arm.with("A", MethodUsed.of(Method.of(method)))
            .baseline(
                Baseline.with()
                    .patients(20)
                    .defect(
                        DefectLength.of(
                            QuantitySummary.with(Unit.CENTIMETRES).mean(defectCentimetres).build()))
                    .build())
            .build();
    Study study =
        Study.with(id, Citation.with("Invented " + id).firstAuthor(id).year(2019).build())
            .arms(List.of(arm))
            .outcomes(List.of(reports))
            .invented(true)
            .build();
    base.save(study, "a reviewer", "test", 0);
  }

  private static OutcomeReport events(int events, int total) {
    return OutcomeReport.with(
            new Scope.OneArm("A"),
            Outcome.of("union"),
            new ReportedValue.Events(EventCount.of(events, total)))
        .build();
  }

  private static OutcomeReport frameMonths(QuantitySummary summary) {
    return OutcomeReport.with(
            new Scope.OneArm("A"),
            Outcome.of("external-fixation-time"),
            new ReportedValue.Quantity(summary))
        .build();
  }

  private Result run(Question question) {
    return run(QuestionPlan.of(question, "invented", true).orElseThrow());
  }

  private Result run(ObjectNode plan) {
    PlanOutcome outcome =
        Runner.with(new SelectionRows(selector()::select)).run(plan, Optional.empty());
    if (outcome instanceof PlanOutcome.Done done) {
      return done.result();
    }
    throw new AssertionError(outcome.json().toString());
  }

  private static Question union() {
    return Question.about(Outcome.of("union"), SearchRequest.EVERYTHING);
  }

  private void detail(String id, String kind, String words, OptionalDouble number) {
    Study study = base.latest().studies(Set.of(id)).get(id).study();
    Arm arm = study.arms().get(0);
    TreeMap<String, Detail> details = new TreeMap<>(arm.details());
    details.put(kind, new Detail(words, number));
    base.save(
        study.but().arms(List.of(arm.but().details(details).build())).build(),
        "a reviewer",
        "test",
        base.latest().studies(Set.of(id)).get(id).version());
  }

  /** Counts by hand: 17 + 18 of 40 with one level, 12 + 13 of 40 with two; one does not say. */
  @Test
  void aDetailOfTheMethodMakesSubgroupsAndNarrowsAndNumbersStandBesideIt() {
    List.of("one", "two", "three", "four", "five")
        .forEach(id -> save(id, "bone-transport", 5, events(12 + id.length(), 20)));
    detail("one", "transport-levels", "bifocal", OptionalDouble.empty());
    detail("two", "transport-levels", "Bifocal", OptionalDouble.empty());
    detail("three", "transport-levels", "trifocal", OptionalDouble.empty());
    detail("four", "transport-levels", "trifocal", OptionalDouble.empty());
    detail("three", "latency-days", "7", OptionalDouble.of(7));
    detail("three", "graft-source", "iliac crest", OptionalDouble.empty());
    ObjectNode plan = QuestionPlan.of(union(), "invented", true).orElseThrow();
    plan.put("subgroup", "transport-levels");
    Result run = run(plan);
    SynthesisResult apart = (SynthesisResult) run.part();
    assertEquals(
        List.of("bifocal 2", "trifocal 2"),
        apart.listOfGroups().stream().map(g -> g.level() + " " + g.studies()).sorted().toList());
    assertEquals(
        List.of("five 2019: column 'transport-levels'"),
        run.warnings().stream()
            .filter(warning -> warning.study().isPresent())
            .map(warning -> warning.study().get() + ": column 'transport-levels'")
            .toList());
    SearchRequest trifocal =
        new SearchRequest(
            "",
            Set.of(),
            Set.of(),
            Set.of(),
            Set.of(),
            HowMade.ANY,
            Set.of(),
            Set.of(MethodDetail.find("transport-levels:trifocal").orElseThrow()),
            YearRange.ANY,
            Optional.empty(),
            DefectMatch.OVERLAP,
            OptionalDouble.empty());
    EvidenceRows.Selected selected =
        new SelectionRows(selector()::select)
            .rows(QuestionJson.write(union().withAmong(trifocal)), "proportion");
    assertEquals(
        Set.of(new RowValue.Text("four 2019"), new RowValue.Text("three 2019")),
        selected.rows().stream().map(row -> row.get("study")).collect(Collectors.toSet()));
  }

  @Test
  void theShareInfectedAtTheStartStandsInTheRowsAsFarAsItIsKnown() {
    save("one", "bone-transport", 5, events(17, 20));
    Study counted = base.latest().studies(Set.of("one")).get("one").study();
    Arm arm = counted.arms().get(0);
    Baseline infected = arm.baseline().but().infected(EventCount.of(5, 20)).build();
    base.save(
        counted.but().arms(List.of(arm.but().baseline(infected).build())).build(),
        "a reviewer",
        "test",
        1);
    save("two", "bone-transport", 5, events(18, 20));
    EvidenceRows.Selected selected =
        new SelectionRows(selector()::select).rows(QuestionJson.write(union()), "proportion");
    assertEquals(new RowValue.Number(0.25), selected.rows().get(0).get("infectedShare"));
    assertEquals(null, selected.rows().get(1).get("infectedShare"));
  }

  @Test
  void thatAllWereInfectedIsAShareAsACountIs() {
    save("one", "bone-transport", 5, events(17, 20));
    Study study = base.latest().studies(Set.of("one")).get("one").study();
    Arm arm = study.arms().get(0);
    Baseline all = arm.baseline().but().infectedAnswer(YesOrNo.YES).build();
    base.save(
        study.but().arms(List.of(arm.but().baseline(all).build())).build(),
        "a reviewer",
        "test",
        1);
    EvidenceRows.Selected selected =
        new SelectionRows(selector()::select).rows(QuestionJson.write(union()), "proportion");
    assertEquals(new RowValue.Number(1), selected.rows().get(0).get("infectedShare"));
  }

  @Test
  void selectedArmsPoolToTheSameNumbersAsTheirTable() {
    save("one", "bone-transport", 6, events(17, 20));
    save("two", "bone-transport", 7, events(20, 20));
    save("three", "bone-transport", 4, events(15, 20));
    Result selected = run(union());
    String table =
        """
        {"source":{"rows":[{"study":"one","events":17,"total":20},
          {"study":"three","events":15,"total":20},{"study":"two","events":20,"total":20}]},
         "measure":"proportion","model":"bayesian","likelihood":"exact"}
        """;
    PlanOutcome outcome = Runner.withoutEvidence().run(table, Optional.empty());
    Result direct = ((PlanOutcome.Done) outcome).result();
    assertEquals(
        SynthesisResult.of(direct).summary().orElseThrow().estimate(),
        SynthesisResult.of(selected).summary().orElseThrow().estimate(),
        1e-12);
    assertEquals(3, SynthesisResult.of(selected).studies().size());
  }

  @Test
  void aStandardErrorAndAnIntervalBecomeStandardDeviationsWithAWarning() {
    save("one", "bone-transport", 6, frameMonths(months().standardError(0.5).n(16).build()));
    save("two", "bone-transport", 6, frameMonths(months().lowerLimit(8).upperLimit(10).build()));
    Result result =
        run(Question.about(Outcome.of("external-fixation-time"), SearchRequest.EVERYTHING));
    List<String> codes = result.warnings().stream().map(Result.Warning::code).toList();
    assertTrue(codes.contains("converted-from-standard-error"), codes.toString());
    assertTrue(codes.contains("converted-from-limits"), codes.toString());
    assertTrue(codes.contains("patients-of-the-arm-taken"), codes.toString());
    // Variance of log mean is SD^2/(n mean^2) = 2^2/(16 * 81) for the first study.
    assertEquals(
        4.0 / (16 * 81),
        SynthesisResult.of(result).studies().get(0).variance().orElseThrow(),
        1e-12);
  }

  private static QuantitySummaryBuilder months() {
    return QuantitySummary.with(Unit.MONTHS).mean(9);
  }

  @Test
  void weeksArePooledAsMonths() {
    save("one", "bone-transport", 6, frameMonths(weeks(40, 8)));
    save("two", "bone-transport", 6, frameMonths(weeks(44, 8)));
    Result result =
        run(Question.about(Outcome.of("external-fixation-time"), SearchRequest.EVERYTHING));
    double shown = SynthesisResult.of(result).studies().get(0).shown().orElseThrow().estimate();
    assertEquals(40 * 7 / 30.44, shown, 1e-9);
  }

  private static QuantitySummary weeks(double mean, double deviation) {
    return QuantitySummary.with(Unit.WEEKS).n(20).mean(mean).standardDeviation(deviation).build();
  }

  @Test
  void nothingSelectedIsAProblemAndNotAResult() {
    ObjectNode plan = QuestionPlan.of(union(), "invented", true).orElseThrow();
    PlanOutcome outcome =
        Runner.with(new SelectionRows(selector()::select)).run(plan, Optional.empty());
    assertTrue(outcome.json().toString().contains("nothing-selected"), outcome.json().toString());
  }

  private Selector selector() {
    return new Selector(search.shown(), base.latest());
  }
}
