package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.curation.EvidenceBase;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.exchange.KnownEvidence;
import gapwise.figure.drawing.Medium;
import gapwise.figure.forest.Forest;
import gapwise.figure.forest.ForestRow;
import gapwise.figure.forest.ForestSummary;
import gapwise.figure.value.Estimate;
import gapwise.search.SearchRequest;
import gapwise.search.StudyIndex;
import gapwise.selection.Question;
import gapwise.selection.Selector;
import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Twelve published studies (resources published/literature-sample, with DOI or PMID of each) all
 * the way: template, checks, store, index, selection, pooling, forest plot with citations. Test
 * data for the path, far too few for a conclusion.
 */
class LiteratureForestTest {
  private static final Path TEMPLATE =
      Path.of("src/test/resources/published/literature-sample/template");

  @TempDir private static Path home;
  private static DocumentStore store;
  private static StudyIndex search;
  private static Answers answers;

  @BeforeAll
  static void importTheSample() {
    Set<String> doubts =
        Import.read(TEMPLATE, KnownEvidence.NONE, key -> false, rows -> {}).warnings().stream()
            .map(warning -> warning.key())
            .collect(Collectors.toSet());
    Imported read = Import.read(TEMPLATE, KnownEvidence.NONE, doubts::contains, rows -> {});
    Imported.Ready ready = (Imported.Ready) read;
    store = DocumentStore.open(home, Clock.systemUTC());
    search = StudyIndex.open(home.resolve("index"), store, EvidenceBase.STUDY, message -> {});
    EvidenceBase base = new EvidenceBase(store);
    base.saveAll(
        ready.studies().iterator(),
        "a reviewer",
        "literature sample",
        ready.warnings().stream().map(warning -> warning.problem()).toList());
    answers = new Answers(new Selector(search.shown(), base.latest())::select);
  }

  @AfterAll
  static void close() {
    search.close();
    store.close();
  }

  private static Forest forest(String outcome) {
    Answer answer = answers.ask(Question.about(Outcome.of(outcome), SearchRequest.EVERYTHING));
    return AnswerForest.of(answer, answer.result().orElseThrow(), Edition.ofProgram("test"));
  }

  private static Map<String, ForestRow> rows(Forest forest) {
    return forest.blocks().stream()
        .flatMap(block -> block.rows().stream())
        .collect(Collectors.toMap(ForestRow::counts, Function.identity(), (a, b) -> a));
  }

  /** Counts as the abstracts print them: 9 of 15, 24 of 24, 40 of 45, 10 of 11. */
  @Test
  void unionStandsOnAForestPlotWithItsCitations() {
    Forest forest = forest("union");
    Map<String, ForestRow> rows = rows(forest);
    assertEquals(Set.of("29 of 32", "24 of 24", "9 of 15", "40 of 45", "10 of 11"), countsOf(rows));
    ForestRow ahmed = rows.get("24 of 24");
    assertTrue(ahmed.citation().contains("10.4103/eoj.eoj_9_19"), ahmed.citation());
    assertEquals(ForestRow.OpenEnd.HIGH, ahmed.openEnd());
    assertTrue(svg(forest).contains("10.4103/eoj.eoj_9_19"), "the file carries the citation");
  }

  private static Set<String> countsOf(Map<String, ForestRow> rows) {
    return rows.keySet().stream()
        .map(counts -> counts.replaceAll(",.*", ""))
        .collect(Collectors.toSet());
  }

  @Test
  void infectionThatCameBackStandsOnAForestPlotWithItsCitations() {
    Forest forest = forest("infection-recurrence");
    List<ForestRow> all = forest.blocks().stream().flatMap(block -> block.rows().stream()).toList();
    assertTrue(all.size() >= 6, "rows " + all.size());
    assertTrue(all.stream().noneMatch(row -> row.citation().isBlank()));
    assertTrue(all.stream().anyMatch(row -> row.counts().startsWith("0 of 32")), "Wang 2016");
    assertTrue(all.stream().anyMatch(row -> row.counts().startsWith("2 of 24")), "Ahmed 2019");
  }

  /**
   * Means of 12.5, 10.1 and 12.75 months and 44 weeks, none with a standard deviation; those with a
   * range get one from it and say so, the others are drawn without an interval.
   */
  @Test
  void fixationTimesWithARangeGetADeviationFromItAndTheOthersAreDrawnWithoutOne() {
    Forest forest = forest("external-fixation-time");
    List<ForestRow> all = forest.blocks().stream().flatMap(block -> block.rows().stream()).toList();
    List<Double> months =
        all.stream().map(ForestRow::estimate).map(Estimate::value).sorted().toList();
    assertEquals(4, months.size(), months.toString());
    assertEquals(44 * 7 / 30.44, months.get(0).doubleValue() < 10.11 ? months.get(1) : 0, 1e-9);
    assertEquals(10.1, months.get(0), 1e-9);
    assertEquals(12.75, months.get(3), 1e-9);
    for (ForestRow row : all) {
      assertEquals(
          row.estimate().intervalKnown(),
          row.detail().contains("SD from the range"),
          row::toString);
    }
    long converted = all.stream().filter(row -> row.estimate().intervalKnown()).count();
    assertTrue(converted > 0 && converted < all.size(), all::toString);
    assertTrue(all.stream().noneMatch(row -> row.citation().isBlank()));
    assertTrue(
        forest.blocks().stream()
            .allMatch(block -> block.summary() instanceof ForestSummary.NotPooled));
    assertTrue(svg(forest).contains("(no SD)"), "said in the figure");
  }

  private static String svg(Forest forest) {
    return forest.draw(Medium.PAGE).get(0).svg();
  }

  /** Overall wording: a question that nothing answers has no result and no figure. */
  @Test
  void whatNobodyReportsHasNoFigure() {
    Answer answer = answers.ask(Question.about(Outcome.of("eq5d"), SearchRequest.EVERYTHING));
    assertEquals(Optional.empty(), answer.result());
  }
}
