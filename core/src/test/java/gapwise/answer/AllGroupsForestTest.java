package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.QuestionPlan;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.curation.EvidenceBase;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.forest.Block;
import gapwise.figure.forest.Forest;
import gapwise.figure.forest.ForestRow;
import gapwise.search.SearchRequest;
import gapwise.search.StudyIndex;
import gapwise.selection.Question;
import gapwise.selection.Selector;
import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Papers with one value for all their groups, and papers that count the other side; invented. */
class AllGroupsForestTest {
  private static final Edition EDITION = new Edition("test", OptionalLong.of(7), Optional.empty());
  private static final Question UNION =
      Question.about(Outcome.of("union"), SearchRequest.EVERYTHING);

  @TempDir Path home;
  private DocumentStore store;
  private StudyIndex search;
  private Answers answers;

  @BeforeEach
  void open() {
    store = DocumentStore.open(home, java.time.Clock.systemUTC());
    search = StudyIndex.open(home.resolve("index"), store, EvidenceBase.STUDY, message -> {});
    EvidenceBase base = new EvidenceBase(store);
    base.saveAll(
        Stream.of(
                study("alone", united(new Scope.OneArm("A"), "union", 17), "induced-membrane"),
                study(
                    "other-side", united(new Scope.OneArm("A"), "nonunion", 3), "induced-membrane"),
                study(
                    "together",
                    united(new Scope.AllArms(), "union", 15),
                    "induced-membrane",
                    "induced-membrane"),
                study(
                    "several",
                    united(new Scope.AllArms(), "union", 12),
                    "induced-membrane",
                    "autograft"))
            .iterator(),
        "a test",
        "invented",
        List.of());
    answers = new Answers(new Selector(search.shown(), base.latest())::select);
  }

  @AfterEach
  void close() {
    search.close();
    store.close();
  }

  private static OutcomeReport united(Scope scope, String outcome, int events) {
    return OutcomeReport.with(
            scope, Outcome.of(outcome), new ReportedValue.Events(EventCount.of(events, 20)))
        .build();
  }

  private static Study study(String id, OutcomeReport report, String... methods) {
    List<Arm> arms = new ArrayList<>();
    for (String method : methods) {
      String letter = String.valueOf((char) ('A' + arms.size()));
      arms.add(
          Arm.with(letter, MethodUsed.of(Method.of(method)))
              .baseline(Baseline.with().patients(20).build())
              .build());
    }
    return Study.with(id, Citation.with("Paper " + id).firstAuthor(id).year(2015).build())
        .invented(true)
        .arms(arms)
        .outcomes(List.of(report))
        .build();
  }

  private Forest forest(Question question) {
    Answer answer = answers.ask(question);
    return AnswerForest.of(answer, answer.result().orElseThrow(), EDITION);
  }

  private static List<String> labels(Block block) {
    return block.rows().stream().map(ForestRow::study).toList();
  }

  @Test
  void aValueForAllGroupsOfOneMethodIsARowOfThatMethod() {
    Forest forest = forest(UNION);
    assertEquals(1, forest.blocks().size());
    assertEquals(
        List.of("alone 2015", "other-side 2015", "together 2015, all groups together"),
        labels(forest.blocks().get(0)));
  }

  @Test
  void aRowFromTheOtherSideSaysSo() {
    ForestRow turned = forest(UNION).blocks().get(0).rows().get(1);
    assertEquals("17 of 20", turned.counts());
    assertTrue(
        turned.detail().endsWith("from its other side: 3 of 20 not united"), turned.detail());
  }

  @Test
  void aPlanOverMethodsTakesTheValueOfSeveralMethodsAndOneByMethodDoesNot() {
    Answers.Ran over = answers.run(plan(false), Optional.empty());
    Result result = assertInstanceOf(PlanOutcome.Done.class, over.outcome()).result();
    assertEquals(4, pooled(result));
    Forest forest = AnswerForest.of(over.answer().orElseThrow(), result, EDITION);
    assertEquals(1, forest.blocks().size());
    assertEquals("Several methods together", forest.blocks().get(0).name());
    assertTrue(labels(forest.blocks().get(0)).contains("several 2015, all groups together"));
    Result byMethod =
        assertInstanceOf(
                PlanOutcome.Done.class, answers.run(plan(true), Optional.empty()).outcome())
            .result();
    assertEquals(3, pooled(byMethod));
  }

  private static String plan(boolean byMethod) {
    ObjectNode plan = QuestionPlan.of(UNION, "invented", byMethod).orElseThrow();
    return plan.toString();
  }

  private static long pooled(Result result) {
    return SynthesisResult.of(result).studies().stream()
        .filter(study -> study.weightPercent().isPresent())
        .count();
  }
}
