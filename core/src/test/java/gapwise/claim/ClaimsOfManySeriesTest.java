package gapwise.claim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.answer.Answers;
import gapwise.claim.Verdict.Examined;
import gapwise.curation.EvidenceBase;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchRequest;
import gapwise.search.StudyIndex;
import gapwise.selection.Selector;
import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Claims on a base with many series and clear differences; all of it invented. */
class ClaimsOfManySeriesTest {
  @TempDir static Path home;
  private static DocumentStore store;
  private static StudyIndex search;
  private static Claims claims;

  @BeforeAll
  static void open() {
    store = DocumentStore.open(home, java.time.Clock.systemUTC());
    search = StudyIndex.open(home.resolve("index"), store, EvidenceBase.STUDY, message -> {});
    EvidenceBase base = new EvidenceBase(store);
    List<Study> studies = new ArrayList<>();
    for (int i = 0; i < 36; i++) {
      // Longer gaps went to transport; events fall with length alike after both.
      String method = i % 2 == 0 ? "bone-transport" : "induced-membrane";
      double length = (i % 2 == 0 ? 5 : 3) + i / 8.0;
      int united = 30 - (int) Math.round(length) - i % 3;
      studies.add(study("series-" + i, Design.SERIES, arm("A", method, length, i), united));
    }
    for (int i = 0; i < 6; i++) {
      studies.add(
          study(
              "pair-" + i,
              Design.RETROSPECTIVE_COMPARATIVE,
              List.of(arm("A", "autograft", 4, i), arm("B", "allograft", 4, i)),
              28 - i % 2,
              12 + i % 3));
    }
    base.saveAll(studies.iterator(), "a test", "invented", List.of());
    claims = new Claims(new Answers(new Selector(search.shown(), base.latest())::select));
  }

  @AfterAll
  static void close() {
    search.close();
    store.close();
  }

  private static Arm arm(String id, String method, double length, int i) {
    return Arm.with(id, MethodUsed.of(Method.of(method)))
        .baseline(
            Baseline.with()
                .patients(30)
                .infected(EventCount.of(5 + (7 * i) % 20, 30))
                .defect(
                    DefectLength.of(QuantitySummary.with(Unit.CENTIMETRES).mean(length).build()))
                .build())
        .build();
  }

  private static Study study(String id, Design design, Arm arm, int united) {
    return study(id, design, List.of(arm), united);
  }

  private static Study study(String id, Design design, List<Arm> arms, int... united) {
    List<OutcomeReport> reports = new ArrayList<>();
    for (int i = 0; i < united.length; i++) {
      reports.add(
          OutcomeReport.with(
                  new Scope.OneArm(arms.get(i).id()),
                  Outcome.of("union"),
                  new ReportedValue.Events(EventCount.of(united[i], 30)))
              .build());
    }
    return Study.with(id, Citation.with("Invented " + id).firstAuthor(id).year(2015).build())
        .design(design)
        .invented(true)
        .arms(arms)
        .outcomes(reports)
        .build();
  }

  private static Examined examined(String a, Direction direction, String b) {
    Outcome union = Outcome.of("union");
    Verdict verdict =
        claims.examine(
            new Claim(
                new Claim.Side(Method.of(a), union, Optional.empty()),
                direction,
                new Claim.Side(Method.of(b), union, Optional.empty()),
                SearchRequest.EVERYTHING,
                Optional.empty(),
                Optional.empty(),
                5));
    assertTrue(verdict instanceof Examined, verdict::toString);
    return (Examined) verdict;
  }

  @Test
  void withThirtySeriesLengthAndInfectionAreAllowedFor() {
    Examined told = examined("bone-transport", Direction.LESS, "induced-membrane");
    for (Part part : told.adjusted()) {
      assertEquals(36, part.compared().orElseThrow().studies(), part::toString);
    }
    JsonNode moderators = told.adjusted().get(2).plan().orElseThrow().get("moderators");
    assertEquals(3, moderators.size());
    assertEquals("infectedShare", moderators.get(2).asText());
    // What looks like a difference is one of length: allowance brings the ratio nearer to 1.
    double without = told.adjusted().get(0).compared().get().estimate();
    double with = told.adjusted().get(1).compared().get().estimate();
    assertTrue(without < with && without < 0.9, without + " " + with);
    assertTrue(
        told.adjusted().get(1).sentences().stream().anyMatch(s -> s.contains("from 5 to 9.3 cm")),
        told.adjusted().get(1).sentences()::toString);
    assertTrue(told.sentence().contains("the claim cannot be made from them"), told.sentence());
  }

  @Test
  void clearComparisonsPointOneWayAndAreStillNotDrawnByLot() {
    Examined with = examined("autograft", Direction.MORE, "allograft");
    assertEquals(6, with.direct().compared().orElseThrow().studies());
    assertEquals(360, with.direct().compared().get().patients());
    assertEquals(Compared.Lean.FIRST_MORE, with.direct().compared().get().lean());
    assertTrue(with.sentence().contains("points the way of the claim"), with.sentence());
    assertTrue(with.sentence().contains("Patients were not randomised"), with.sentence());
    Examined against = examined("autograft", Direction.LESS, "allograft");
    assertTrue(against.sentence().contains("points against the claim"), against.sentence());
    Examined turned = examined("allograft", Direction.MORE, "autograft");
    assertEquals(Compared.Lean.FIRST_LESS, turned.direct().compared().orElseThrow().lean());
    assertEquals(
        1 / with.direct().compared().get().estimate(),
        turned.direct().compared().get().estimate(),
        1e-6);
  }

  @Test
  void clearComparisonsStayOnOneSideUnderEveryAnalysis() {
    Ways ways = claims.ways(examined("autograft", Direction.MORE, "allograft"));
    assertEquals("100", ways.lines().get(0).estimatesFirstMore());
    assertEquals("0", ways.lines().get(0).secondMore());
  }
}
