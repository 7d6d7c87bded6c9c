package gapwise.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.cohort.CohortDecision;
import gapwise.evidence.Arm;
import gapwise.evidence.Citation;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.problem.Problem;
import gapwise.search.SearchRequest;
import gapwise.selection.Question.SuspectedOverlap;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a person settled of shared patients decides which rows are counted. Studies are invented.
 */
class SettledOverlapTest {
  private static final Outcome UNION = Outcome.of("union");

  private Home home;

  @BeforeEach
  void open(@TempDir Path folder) {
    home = new Home(folder);
  }

  @AfterEach
  void close() {
    home.close();
  }

  private static CohortDecision settled(
      String first, String second, CohortDecision.Settled settled, Map<String, String> suppliers) {
    return new CohortDecision(
        first,
        second,
        settled,
        "the authors were asked",
        "tester",
        Instant.parse("2020-01-01T00:00:00Z"),
        Optional.empty(),
        new TreeMap<>(suppliers),
        "");
  }

  @Test
  void ofStudiesThatAPersonFoundToOverlapEachOutcomeHasItsSupplierAndIsCountedOnce() {
    home.keep(study("a", union(10, 12)), study("b", union(20, 30)), study("c", union(9, 12)));
    CohortDecision decision =
        settled("a", "b", CohortDecision.Settled.OVERLAPPING, Map.of(UNION.code(), "a"));
    Selection named = home.selector(decision).select(aboutUnion());
    assertEquals(List.of("a", "c"), studies(named));
    assertEquals(List.of("overlapping-cohort"), codes(named));
    assertTrue(named.leftOut().get(0).message().contains("a person named"));
    CohortDecision other =
        settled("a", "b", CohortDecision.Settled.OVERLAPPING, Map.of("refracture", "a"));
    Selection usual = home.selector(other).select(aboutUnion());
    assertEquals(List.of("b", "c"), studies(usual), "the usual rule: the most patients");
    assertTrue(usual.leftOut().get(0).message().contains("it has more patients"));
    assertNotEquals(home.selector().select(aboutUnion()).dataSha256(), usual.dataSha256());
  }

  @Test
  void ofStudiesOfWhichAPersonCouldNotTellOneIsLeftOutWhereThatIsAskedAndNotedElse() {
    home.keep(study("a", union(10, 12)), study("b", union(20, 30)));
    Selector selector =
        home.selector(settled("a", "b", CohortDecision.Settled.NOT_KNOWN, Map.of()));
    Selection kept = selector.select(aboutUnion());
    assertEquals(List.of("a", "b"), studies(kept));
    assertEquals(List.of("overlap-suspected"), noteCodes(kept));
    Selection without =
        selector.select(aboutUnion().withSuspectedOverlap(SuspectedOverlap.LEAVE_OUT));
    assertEquals(List.of("b"), studies(without));
    assertEquals(List.of("overlap-left-out"), codes(without));
  }

  @Test
  void studiesThatAPersonHeldApartBothCount() {
    home.keep(study("a", union(10, 12)), study("b", union(20, 30)));
    Selection selection =
        home.selector(settled("a", "b", CohortDecision.Settled.SEPARATE, Map.of()))
            .select(aboutUnion());
    assertEquals(List.of("a", "b"), studies(selection));
    assertEquals(List.of(), noteCodes(selection));
  }

  @Test
  void aGroupThatIsAPartOfAnotherIsCountedOnce() {
    Arm whole = study("a").arms().get(0);
    Arm part = Arm.with("B", whole.method()).label("tibia only").baseline(whole.baseline()).build();
    OutcomeReport ofPart = OutcomeReport.with(new Scope.OneArm("B"), UNION, value(5, 7)).build();
    List<OutcomeReport> both = List.of(union(10, 12), ofPart);
    home.keep(study("a").but().arms(List.of(whole, part)).outcomes(both).build());
    assertEquals(2, home.selector().select(aboutUnion()).rows().size());
    Selection once =
        home.selector(settled("a/A", "a/B", CohortDecision.Settled.OVERLAPPING, Map.of()))
            .select(aboutUnion());
    assertEquals(List.of("A"), once.rows().stream().map(row -> row.arm().id()).toList());
    assertEquals(List.of("overlapping-cohort"), codes(once));
  }

  private static Question aboutUnion() {
    return Question.about(UNION, SearchRequest.EVERYTHING);
  }

  private static Study study(String id, OutcomeReport... reports) {
    return Study.with(id, Citation.with("Invented study " + id).year(2001).build())
        .invented(true)
        .arms(List.of(Arm.with("A", MethodUsed.of(Method.of("bone-transport"))).build()))
        .outcomes(List.of(reports))
        .build();
  }

  private static OutcomeReport union(int events, int total) {
    return OutcomeReport.with(new Scope.OneArm("A"), UNION, value(events, total)).build();
  }

  private static ReportedValue value(int events, int total) {
    return new ReportedValue.Events(EventCount.of(events, total));
  }

  private static List<String> studies(Selection selection) {
    return selection.rows().stream().map(row -> row.study().id()).toList();
  }

  private static List<String> codes(Selection selection) {
    return selection.leftOut().stream().map(LeftOut::code).toList();
  }

  private static List<String> noteCodes(Selection selection) {
    return selection.notes().stream()
        .map(Problem::code)
        .filter(code -> code.startsWith("overlap"))
        .toList();
  }
}
