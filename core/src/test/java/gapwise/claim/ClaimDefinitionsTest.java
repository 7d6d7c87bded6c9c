package gapwise.claim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.answer.Answers;
import gapwise.claim.Verdict.Examined;
import gapwise.claim.Verdict.Refused;
import gapwise.curation.EvidenceBase;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchRequest;
import gapwise.search.StudyIndex;
import gapwise.selection.Selector;
import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Claims about series that define the outcome in other words, or not at all; all invented. */
class ClaimDefinitionsTest {
  private static final Method TRANSPORT = Method.of("bone-transport");
  private static final Method MEMBRANE = Method.of("induced-membrane");

  @TempDir Path home;
  private DocumentStore store;
  private StudyIndex search;
  private EvidenceBase base;
  private Claims claims;

  @BeforeEach
  void open() {
    store = DocumentStore.open(home, java.time.Clock.systemUTC());
    search = StudyIndex.open(home.resolve("index"), store, EvidenceBase.STUDY, message -> {});
    base = new EvidenceBase(store);
  }

  @AfterEach
  void close() {
    search.close();
    store.close();
  }

  private Verdict examine(String outcome, Study... studies) {
    base.saveAll(Stream.of(studies).iterator(), "a test", "invented", List.of());
    claims = new Claims(new Answers(new Selector(search.shown(), base.latest())::select));
    return claims.examine(claim(outcome));
  }

  private static Claim claim(String outcome) {
    return new Claim(
        new Claim.Side(TRANSPORT, Outcome.of(outcome), Optional.empty()),
        Direction.MORE,
        new Claim.Side(MEMBRANE, Outcome.of(outcome), Optional.empty()),
        SearchRequest.EVERYTHING,
        Optional.empty(),
        Optional.empty(),
        5);
  }

  private static Study united(String id, Method method, int events, Optional<String> definition) {
    OutcomeReport.Builder report =
        OutcomeReport.with(
            new Scope.OneArm("a"),
            Outcome.of("union"),
            new ReportedValue.Events(EventCount.of(events, 30)));
    definition.ifPresent(report::definition);
    return study(id, method, report.build());
  }

  private static Study months(String id, Method method, Optional<Clock> clock) {
    OutcomeReport.Builder report =
        OutcomeReport.with(
            new Scope.OneArm("a"),
            Outcome.of("time-to-union"),
            new ReportedValue.Quantity(
                QuantitySummary.with(Unit.MONTHS).n(30).mean(8).standardDeviation(2).build()));
    clock.ifPresent(report::clock);
    return study(id, method, report.build());
  }

  private static Study study(String id, Method method, OutcomeReport report) {
    return Study.with(id, Citation.with("Paper " + id).firstAuthor(id).year(2015).build())
        .invented(true)
        .arms(
            List.of(
                Arm.with("a", MethodUsed.of(method))
                    .baseline(Baseline.with().patients(30).build())
                    .build()))
        .outcomes(List.of(report))
        .build();
  }

  @Test
  void aClaimIsNotRefusedForTheWordingOfDefinitions() {
    Examined told =
        assertInstanceOf(
            Examined.class,
            examine(
                "union",
                united("t1", TRANSPORT, 27, Optional.of("frame off and walking without pain")),
                united("t2", TRANSPORT, 25, Optional.of("the frame was removed")),
                united("m1", MEMBRANE, 24, Optional.of("three of four cortices bridged")),
                united("m2", MEMBRANE, 26, Optional.empty())));
    assertEquals(
        List.of(
            "frame off: 2 of 2 series after bone transport, 0 of 2 after induced membrane",
            "bridging of three of four cortices: 0 of 2 series after bone transport, 1 of 2 after"
                + " induced membrane",
            "walking without pain: 1 of 2 series after bone transport, 0 of 2 after induced"
                + " membrane",
            "not said: 0 of 2 series after bone transport, 1 of 2 after induced membrane"),
        told.definitions());
    assertTrue(
        told.lowers().stream().anyMatch(fact -> fact.startsWith("Definitions apart:")),
        told.lowers()::toString);
    assertEquals(List.of(), told.offers());
  }

  @Test
  void aDefinitionThatBothSidesKnowIsOfferedAtOneClick() {
    Examined told =
        assertInstanceOf(
            Examined.class,
            examine(
                "union",
                united("t1", TRANSPORT, 27, Optional.of("frame off, 3 of 4 cortices")),
                united("m1", MEMBRANE, 24, Optional.of("three cortices bridged"))));
    assertEquals(
        List.of("definition three-cortices"),
        told.offers().stream().map(offer -> offer.name() + " " + offer.value()).toList());
    assertTrue(
        told.lowers().stream().anyMatch(fact -> fact.startsWith("Mixed definitions:")),
        told.lowers()::toString);
  }

  @Test
  void aSideThatStatesNoClockIsHeldAgainstOneThatDoesWithACaution() {
    Examined told =
        assertInstanceOf(
            Examined.class,
            examine(
                "time-to-union",
                months("t1", TRANSPORT, Optional.of(Clock.INJURY)),
                months("t2", TRANSPORT, Optional.of(Clock.INJURY)),
                months("m1", MEMBRANE, Optional.empty()),
                months("m2", MEMBRANE, Optional.empty())));
    assertEquals(4, told.rows().selection().rows().size());
    assertTrue(
        told.lowers().stream()
            .anyMatch(fact -> fact.contains("2 of 4 groups do not say from when they count")),
        told.lowers()::toString);
    assertEquals(
        List.of("unstated-clock leave-out"),
        told.offers().stream().map(offer -> offer.name() + " " + offer.value()).toList());
  }

  @Test
  void statedClocksThatDifferAreRefused() {
    Refused refused =
        assertInstanceOf(
            Refused.class,
            examine(
                "time-to-union",
                months("t1", TRANSPORT, Optional.of(Clock.INJURY)),
                months("m1", MEMBRANE, Optional.of(Clock.GRAFTING))));
    assertEquals("different-clocks", refused.code());
  }
}
