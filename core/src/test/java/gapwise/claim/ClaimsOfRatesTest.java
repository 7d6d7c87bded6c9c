package gapwise.claim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.answer.Answers;
import gapwise.curation.EvidenceBase;
import gapwise.evidence.Arm;
import gapwise.evidence.Citation;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchRequest;
import gapwise.search.StudyIndex;
import gapwise.selection.Selector;
import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A claim about events of which one patient can have several. All studies are invented. */
class ClaimsOfRatesTest {
  private static final Outcome COMPLICATIONS = Outcome.of("complications");

  @TempDir private Path home;

  private static Study study(String id, int patients, int transport, int membrane) {
    return Study.with(id, Citation.with("Invented " + id).firstAuthor(id).year(2020).build())
        .invented(true)
        .arms(
            List.of(
                Arm.with("A", MethodUsed.of(Method.of("bone-transport"))).build(),
                Arm.with("B", MethodUsed.of(Method.of("induced-membrane"))).build()))
        .outcomes(List.of(tally("A", transport, patients), tally("B", membrane, patients)))
        .build();
  }

  private static OutcomeReport tally(String arm, int events, int among) {
    return OutcomeReport.with(
            new Scope.OneArm(arm),
            COMPLICATIONS,
            new ReportedValue.Tally(events, OptionalInt.of(among)))
        .build();
  }

  /**
   * Both studies treat as many patients either way and count twice as many events with transport,
   * so that the rate ratio is 2 by the likelihood of Poisson counts given their sums.
   */
  @Test
  void ratesOfTheSameStudiesAreComparedByTheirRatioAndNoTrialIsWorkedOut() {
    try (DocumentStore store = DocumentStore.open(home, java.time.Clock.systemUTC());
        StudyIndex search =
            StudyIndex.open(home.resolve("index"), store, EvidenceBase.STUDY, message -> {})) {
      EvidenceBase base = new EvidenceBase(store);
      base.saveAll(
          List.of(study("g", 20, 24, 12), study("h", 16, 20, 10)).iterator(),
          "a reviewer",
          "invented",
          List.of());
      Claims claims = new Claims(new Answers(new Selector(search.shown(), base.latest())::select));
      Verdict.Examined told =
          (Verdict.Examined)
              claims.examine(
                  new Claim(
                      new Claim.Side(Method.of("bone-transport"), COMPLICATIONS, Optional.empty()),
                      Direction.MORE,
                      new Claim.Side(
                          Method.of("induced-membrane"), COMPLICATIONS, Optional.empty()),
                      SearchRequest.EVERYTHING,
                      Optional.empty(),
                      Optional.empty(),
                      5));
      Compared direct = told.direct().compared().orElseThrow();
      assertEquals(2, direct.studies());
      assertEquals(72, direct.patients());
      // Twice as often; the prior of the ratio, about 1, draws it a little.
      assertEquals(2, direct.estimate(), 0.01);
      assertEquals("rate ratio", direct.kind());
      assertTrue(
          told.sentence().contains("there were 1.99 times as many for each patient"),
          told.sentence());
      assertTrue(
          claims.settle(told, OptionalDouble.empty()).sentence().contains("shares and means"));
      assertFalse(claims.ways(told).lines().isEmpty());
    }
  }
}
