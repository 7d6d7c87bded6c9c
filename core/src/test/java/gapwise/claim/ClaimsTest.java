package gapwise.claim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.Runner;
import gapwise.answer.Answers;
import gapwise.claim.Verdict.Examined;
import gapwise.claim.Verdict.Refused;
import gapwise.curation.EvidenceBase;
import gapwise.demonstration.DemonstrationEvidence;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchRequest;
import gapwise.search.SearchRequest.DefectMatch;
import gapwise.search.StudyIndex;
import gapwise.selection.DefinitionAsked;
import gapwise.selection.Selector;
import gapwise.store.DocumentStore;
import gapwise.synthesis.trial.Demands;
import gapwise.synthesis.trial.TrialOfProportions;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Claims on the demonstration evidence base, which is invented. */
class ClaimsTest {
  private static final Method TRANSPORT = Method.of("bone-transport");
  private static final Method MEMBRANE = Method.of("induced-membrane");
  private static final Method SCAFFOLD = Method.of("printed-scaffold");
  private static final Method AUTOGRAFT = Method.of("autograft");

  @TempDir static Path home;
  private static DocumentStore store;
  private static StudyIndex search;
  private static Claims claims;

  @BeforeAll
  static void open() {
    store = DocumentStore.open(home, java.time.Clock.systemUTC());
    search = StudyIndex.open(home.resolve("index"), store, EvidenceBase.STUDY, message -> {});
    EvidenceBase base = new EvidenceBase(store);
    base.saveAll(DemonstrationEvidence.studies().iterator(), "a test", "demonstration", List.of());
    claims = new Claims(new Answers(new Selector(search.shown(), base.latest())::select));
  }

  @AfterAll
  static void close() {
    search.close();
    store.close();
  }

  private static Claim claim(Method a, String outcome, Method b) {
    return claim(a, outcome, b, SearchRequest.EVERYTHING, Optional.empty(), Optional.empty());
  }

  private static Claim claim(
      Method a,
      String outcome,
      Method b,
      SearchRequest among,
      Optional<Clock> clock,
      Optional<DefinitionAsked> definition) {
    return new Claim(
        new Claim.Side(a, Outcome.of(outcome), clock),
        Direction.MORE,
        new Claim.Side(b, Outcome.of(outcome), clock),
        among,
        definition,
        Optional.empty(),
        5);
  }

  private static Examined examined(Claim claim) {
    Verdict verdict = claims.examine(claim);
    assertTrue(verdict instanceof Examined, verdict::toString);
    return (Examined) verdict;
  }

  private static Refused refused(Claim claim) {
    Verdict verdict = claims.examine(claim);
    assertTrue(verdict instanceof Refused, verdict::toString);
    return (Refused) verdict;
  }

  @Test
  void directComparisonsArePooledAndLeaveOpenWhatTheyLeaveOpen() {
    Examined told = examined(claim(TRANSPORT, "primary-union", MEMBRANE));
    // Studies 54 (20 of 22, 19 of 20) and 55 (12 of 14, 10 of 15)
    Compared compared = told.direct().compared().orElseThrow();
    assertEquals(2, compared.studies());
    assertEquals(71, compared.patients());
    assertEquals(Compared.Lean.OPEN, compared.lean());
    JsonNode rows = told.direct().plan().orElseThrow().at("/source/rows");
    assertEquals(20, rows.get(0).path("intervention.events").asInt());
    assertEquals(15, rows.get(1).path("comparator.total").asInt());
    assertTrue(told.sentence().startsWith("2 studies with 71 patients or limbs have compared"));
    assertTrue(told.sentence().contains("can neither be made nor denied"), told.sentence());
    assertTrue(told.sentence().contains("randomised in 1 of them only"), told.sentence());
    assertTrue(told.alert().isPresent());
    assertTrue(told.indirect().compared().isEmpty());
    assertTrue(told.indirect().sentences().get(0).startsWith("No path"));
  }

  @Test
  void whereNoCommonValueComesOfTheComparisonsTheirCountsAreToldAndNoMore() {
    Examined told = examined(claim(TRANSPORT, "final-union", MEMBRANE));
    assertTrue(told.direct().compared().isEmpty());
    assertTrue(
        told.direct().sentences().stream().anyMatch(s -> s.contains("14 of 14 against 14 of 15")),
        told.direct().sentences()::toString);
    assertTrue(told.sentence().contains("yet no common value comes of it"), told.sentence());
  }

  @Test
  void methodsThatNoStudyHoldsTogetherAreComparedThroughAThird() {
    Examined told = examined(claim(TRANSPORT, "primary-union", SCAFFOLD));
    assertTrue(told.direct().compared().isEmpty());
    Compared through = told.indirect().compared().orElseThrow();
    // Through the membrane: studies 54, 55 and 57 (8 of 10, 12 of 12)
    assertEquals(3, through.studies());
    assertEquals(71 + 22, through.patients());
    assertTrue(told.indirect().sentences().get(0).startsWith("Through induced membrane"));
    assertTrue(told.sentence().startsWith("No study here has compared"), told.sentence());
    assertTrue(told.sentence().contains("the claim cannot be made from them"), told.sentence());
  }

  @Test
  void withoutAnyPathTheSentenceSaysThereIsNoComparison() {
    Examined told = examined(claim(AUTOGRAFT, "primary-union", SCAFFOLD));
    assertTrue(told.direct().compared().isEmpty());
    assertTrue(told.indirect().compared().isEmpty());
    assertTrue(told.indirect().sentences().get(0).startsWith("No path"));
    assertTrue(told.sentence().contains("which are no comparison"), told.sentence());
  }

  @Test
  void allowanceIsRefusedWithFewerThanTenSeriesForEachModerator() {
    Examined told = examined(claim(TRANSPORT, "primary-union", MEMBRANE));
    assertTrue(told.adjusted().get(0).compared().isPresent());
    Part length = told.adjusted().get(1);
    assertTrue(length.compared().isEmpty());
    assertTrue(length.sentences().get(0).contains("it takes 20"), length.sentences()::toString);
    assertTrue(told.adjusted().get(2).sentences().get(0).contains("it takes 30"));
  }

  @Test
  void timesOnDifferentClocksAreRefusedAndTheSharedClockIsOffered() {
    Refused told = refused(claim(TRANSPORT, "time-to-union", MEMBRANE));
    assertEquals("different-clocks", told.code());
    assertEquals(
        List.of("clock injury"),
        told.offers().stream().map(offer -> offer.name() + " " + offer.value()).toList());
    Examined onClock =
        examined(
            claim(
                TRANSPORT,
                "time-to-union",
                MEMBRANE,
                SearchRequest.EVERYTHING,
                Optional.of(Clock.INJURY),
                Optional.empty()));
    assertTrue(onClock.notPooled().orElseThrow().contains("2 of 2 series"));
    assertTrue(claims.settle(onClock, OptionalDouble.empty()).plan().isEmpty());
  }

  @Test
  void differentOutcomesAndTheSameMethodAreRefusedBeforeAnythingIsLookedUp() {
    Claim months =
        new Claim(
            new Claim.Side(TRANSPORT, Outcome.of("external-fixation-time"), Optional.empty()),
            Direction.LESS,
            new Claim.Side(MEMBRANE, Outcome.of("time-to-full-weight-bearing"), Optional.empty()),
            SearchRequest.EVERYTHING,
            Optional.empty(),
            Optional.empty(),
            5);
    assertEquals("different-outcomes", refused(months).code());
    assertEquals(2, refused(months).offers().size());
    assertEquals("same-method", refused(claim(TRANSPORT, "union", TRANSPORT)).code());
  }

  @Test
  void anOutcomeThatOneSideDoesNotReportIsSaidToBeEmpty() {
    Refused told = refused(claim(TRANSPORT, "external-fixation-time", MEMBRANE));
    assertEquals("nothing-reported", told.code());
    assertTrue(told.reason().contains("no finding about the method"), told.reason());
  }

  @Test
  void aDefinitionThatBothSidesShareNarrowsToItsSeries() {
    Examined all = examined(claim(TRANSPORT, "primary-union", MEMBRANE));
    assertTrue(all.definitions().size() > 1);
    Verdict.Offer offer = all.offers().get(0);
    Examined one =
        examined(
            claim(
                TRANSPORT,
                "primary-union",
                MEMBRANE,
                SearchRequest.EVERYTHING,
                Optional.empty(),
                DefinitionAsked.find(offer.value())));
    assertEquals(List.of(), one.offers());
    DefinitionAsked asked = DefinitionAsked.find(offer.value()).orElseThrow();
    assertTrue(
        one.rows().selection().rows().stream().allMatch(row -> asked.fits(row.definition())));
    assertTrue(one.rows().selection().rows().size() < all.rows().selection().rows().size());
    assertEquals(
        offer.value(), one.rows().plan().orElseThrow().at("/source/evidence/definition").asText());
  }

  @Test
  void theSizeOfTheDefectStandsInTheSentence() {
    Claim large =
        claim(
            TRANSPORT,
            "primary-union",
            MEMBRANE,
            SearchRequest.EVERYTHING.withDefect(LengthRange.from(6), DefectMatch.OVERLAP),
            Optional.empty(),
            Optional.empty());
    assertTrue(large.words().contains("missing bone"), large.words());
    assertTrue(examined(large).sentence().contains("missing bone"));
  }

  @Test
  void theTrialStartsFromThePooledValueAndTheDifferenceCanBeChanged() {
    Examined told = examined(claim(TRANSPORT, "primary-union", MEMBRANE));
    Settling usual = claims.settle(told, OptionalDouble.empty());
    assertTrue(usual.usual());
    JsonNode plan = usual.plan().orElseThrow();
    assertEquals(
        plan.get("comparator").asDouble() + usual.difference() / 100,
        plan.get("intervention").asDouble(),
        1e-12);
    assertTrue(
        usual.sentence().startsWith("A randomised trial of two equal arms"), usual.sentence());
    assertTrue(claims.settle(told, OptionalDouble.of(0)).sentence().contains("a difference of 0"));
    assertTrue(claims.settle(told, OptionalDouble.of(60)).sentence().startsWith("Not worked out"));
  }

  /** Such numbers of patients are held against SciPy by TrialSizeTest. */
  @Test
  void aTrialOfFewPatientsIsToldAsCountedByTheExactTest() {
    Claim few =
        new Claim(
            new Claim.Side(TRANSPORT, Outcome.of("primary-union"), Optional.empty()),
            Direction.LESS,
            new Claim.Side(MEMBRANE, Outcome.of("primary-union"), Optional.empty()),
            SearchRequest.EVERYTHING,
            Optional.empty(),
            Optional.empty(),
            5);
    Settling told = claims.settle(examined(few), OptionalDouble.of(50));
    JsonNode plan = told.plan().orElseThrow();
    int perArm =
        new TrialOfProportions(
                plan.get("comparator").asDouble(), plan.get("intervention").asDouble())
            .patientsPerArmByExactTest(new Demands(0.05, 0.80))
            .orElseThrow();
    assertTrue(
        told.sentence()
            .startsWith(
                "A randomised trial of two equal arms, read by Fisher's exact test, would need "
                    + perArm
                    + " patients in each arm, "
                    + 2 * perArm
                    + " in all"),
        told.sentence());
  }

  @Test
  void theDirectComparisonStandsUnderManyAnalysesAndItsPlanGivesThemAgain() {
    Ways ways = claims.ways(examined(claim(TRANSPORT, "primary-union", MEMBRANE)));
    assertEquals(1, ways.lines().size(), ways::toString);
    Ways.Line line = ways.lines().get(0);
    assertTrue(line.analyses() > 10);
    assertFalse(line.moves().isEmpty());
    JsonNode again = Runner.withoutEvidence().run(line.plan(), Optional.empty()).json();
    assertEquals(line.analyses(), again.at("/multiverse/estimated").asInt());
    assertEquals(1, again.at("/multiverse/threshold/value").asDouble());
  }

  @Test
  void withoutTwoDirectComparisonsEachMethodIsHeldAgainstTheValueOfTheOther() {
    Ways ways = claims.ways(examined(claim(TRANSPORT, "primary-union", SCAFFOLD)));
    assertEquals(2, ways.lines().size(), ways::toString);
    assertTrue(ways.lines().get(0).heading().startsWith("Series of bone transport against"));
    assertEquals("multiverse", ways.lines().get(1).plan().get("task").asText());
  }
}
