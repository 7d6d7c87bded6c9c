package gapwise.claim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.patients.PatientsAnswer;
import gapwise.analysis.patients.PatientsResult.Coefficient;
import gapwise.answer.Answers;
import gapwise.curation.EvidenceBase;
import gapwise.demonstration.DemonstrationEvidence;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchRequest;
import gapwise.search.StudyIndex;
import gapwise.selection.Selector;
import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Separate series compared patient by patient, on the invented demonstration base. The model of one
 * method is held against a mixed-model library where it is documented (patients-with-summaries);
 * here two of them are set against each other by hand.
 */
class PatientsPartTest {
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

  private static List<Part> parts(String first, String outcome, String second) {
    Claim claim =
        new Claim(
            new Claim.Side(Method.of(first), Outcome.of(outcome), Optional.empty()),
            Direction.MORE,
            new Claim.Side(Method.of(second), Outcome.of(outcome), Optional.empty()),
            SearchRequest.EVERYTHING,
            Optional.empty(),
            Optional.empty(),
            1);
    Verdict verdict = claims.examine(claim);
    return ((Verdict.Examined) verdict)
        .adjusted().stream().filter(part -> part.heading().contains("patient")).toList();
  }

  private static Coefficient intercept(Part part) {
    PlanOutcome.Done done =
        (PlanOutcome.Done)
            Runner.withoutEvidence().run(part.plan().orElseThrow(), Optional.empty());
    return done.result().part(PatientsAnswer.class).orElseThrow().patients().coefficients().stream()
        .filter(one -> one.term().equals("intercept"))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void twoModelsAreSetAgainstEachOtherAtOneLength() {
    List<Part> parts = parts("bone-transport", "infection-recurrence", "induced-membrane");
    assertEquals(3, parts.size());
    Compared compared = parts.get(0).compared().orElseThrow();
    // Each plan, run again by itself, gives the outcome of its method at the length.
    Coefficient first = intercept(parts.get(1));
    Coefficient second = intercept(parts.get(2));
    double difference = first.estimate() - second.estimate();
    double error =
        Math.sqrt(Math.pow(first.standardError(), 2) + Math.pow(second.standardError(), 2));
    double half =
        error
            * new TDistribution(Math.min(first.degreesOfFreedom(), second.degreesOfFreedom()))
                .inverseCumulativeProbability(0.975);
    assertEquals(Math.exp(difference), compared.estimate(), 1e-9 * compared.estimate());
    assertEquals(difference - half, Math.log(compared.lower()), 1e-7);
    assertEquals(difference + half, Math.log(compared.upper()), 1e-7);
    assertTrue(
        parts.get(0).sentences().stream().anyMatch(told -> told.contains("separate groups")));
  }

  @Test
  void timesAreComparedOnTheScaleOfTheirPlan() {
    List<Part> parts = parts("vascularised-bone-flap", "time-to-union", "printed-scaffold");
    Compared compared = parts.get(0).compared().orElseThrow();
    assertEquals(
        Math.exp(intercept(parts.get(1)).estimate() - intercept(parts.get(2)).estimate()),
        compared.estimate(),
        1e-9);
    assertEquals("ratio of means", compared.kind());
    assertEquals("log", parts.get(1).plan().orElseThrow().path("scale").asText());
  }

  @Test
  void oneSeriesAfterAMethodIsNotEnough() {
    List<Part> parts = parts("bone-transport", "infection-recurrence", "printed-scaffold");
    assertEquals(1, parts.size());
    assertFalse(parts.get(0).compared().isPresent());
    assertEquals(
        "Not worked out: 1 series after printed scaffold tells the outcome with a missing length,"
            + " and each method takes two.",
        parts.get(0).sentences().get(0));
  }
}
