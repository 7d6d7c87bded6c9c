package gapwise.server.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.curation.ExtractionBase;
import gapwise.curation.KeptStudy;
import gapwise.desk.AgreedDraft;
import gapwise.desk.Draft;
import gapwise.desk.DraftCheck;
import gapwise.desk.HandedInDraft;
import gapwise.desk.Submission;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.exchange.Template;
import gapwise.extraction.Extraction;
import gapwise.extraction.FieldChoice;
import gapwise.extraction.FieldChoice.Taken;
import gapwise.extraction.Reconciliation;
import gapwise.extraction.TwiceRead;
import gapwise.intake.Intake;
import gapwise.screening.Reader;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A paper that two people extract differently, settled in each field and agreed; and what must be
 * true of it after a kill at any moment. The paper is invented.
 */
final class KilledReconciliation {
  private static final Reader FIRST = Reader.of("AB").orElseThrow();
  private static final Reader SECOND = Reader.of("CD").orElseThrow();
  private static final Reader SETTLER = Reader.of("EF").orElseThrow();
  private static final Instant NOW = Instant.parse("2026-03-01T08:00:00Z");

  private KilledReconciliation() {}

  static String study(int number) {
    return "agreed" + number;
  }

  /** From opening the paper to its agreed record. */
  static void reconcile(Home home, int number) {
    String study = study(number);
    ExtractionBase base = home.extractions().base();
    require(
        base.open(
            TwiceRead.opened(
                study,
                Optional.empty(),
                "",
                FIRST,
                SECOND,
                Optional.of(SETTLER),
                new TwiceRead.Opened(SETTLER, NOW))));
    require(base.handIn(kept(base, study), extraction(study, FIRST, 30), "extracted"));
    require(base.handIn(kept(base, study), extraction(study, SECOND, 31), "extracted"));
    require(base.begin(kept(base, study), new TwiceRead.Settling(SETTLER, 0, NOW)));
    Reconciliation both = home.extractions().reconciliation(study).orElseThrow();
    require(
        base.settle(
            study,
            both.open().stream()
                .map(
                    one ->
                        FieldChoice.of(
                            study, one, Taken.SECOND, "", "as printed in Table 1", SETTLER, NOW))
                .toList(),
            Map.of()));
    finish(home, kept(base, study), home.extractions().reconciliation(study).orElseThrow());
  }

  private static void finish(Home home, ExtractionBase.Kept seen, Reconciliation both) {
    require(both.open().isEmpty());
    Draft draft = AgreedDraft.of(seen.paper().study(), 0, both.agreed(), both.both(), List.of());
    Study agreed = DraftCheck.of(draft, home.intake().known()).study().orElseThrow();
    HandedInDraft came =
        new Submission(home.intake())
            .handIn(
                draft,
                new Intake.As(SETTLER.name(), "agreed"),
                version ->
                    List.of(
                        home.extractions()
                            .base()
                            .end(
                                seen,
                                new TwiceRead.Finished(
                                    SETTLER,
                                    version,
                                    TwiceRead.Finished.contentOf(agreed),
                                    "agreed",
                                    NOW))));
    require(came instanceof HandedInDraft.Stored);
  }

  private static ExtractionBase.Kept kept(ExtractionBase base, String study) {
    return base.find(study).orElseThrow();
  }

  private static Extraction extraction(String id, Reader reader, int patients) {
    Draft draft = Draft.of(id);
    int study = draft.rows(Template.STUDIES).get(0).number();
    int arm = draft.rows(Template.ARMS).get(0).number();
    Draft filled =
        draft
            .withCell(study, "invented", "yes", Optional.empty())
            .withCell(study, "title", "Invented series " + id, Optional.empty())
            .withCell(arm, "method", "autograft", Optional.empty())
            .withCell(arm, "patients", Integer.toString(patients), Optional.empty());
    return Extraction.of(
        DraftCheck.of(filled).study().orElseThrow(), reader, Optional.empty(), List.of(), NOW);
  }

  private static void require(boolean done) {
    if (!done) {
      throw new IllegalStateException("a step of the reconciliation was refused");
    }
  }

  /** The agreed record and the end of its reconciliation are there together, or neither is. */
  static void lookAtAll(Home home) {
    for (TwiceRead paper : home.extractions().papers()) {
      Optional<Study> study = home.base().latest().study(paper.study()).map(KeptStudy::study);
      assertEquals(study.isPresent(), paper.finished().isPresent(), "half a reconciliation");
      study.ifPresent(
          agreed -> {
            assertEquals(ExtractionStatus.AGREED, agreed.status());
            assertTrue(paper.finished().orElseThrow().holds(agreed));
          });
    }
  }

  /** What was said to be agreed is, with its difference and the choice. */
  static void lookAt(Home home, int number) {
    TwiceRead paper = home.extractions().find(study(number)).orElseThrow().paper();
    assertTrue(paper.finished().isPresent(), "a reconciliation is lost");
    Reconciliation both = home.extractions().reconciliation(study(number)).orElseThrow();
    assertEquals(1, both.compared().differences().size());
    assertTrue(both.open().isEmpty(), "a choice is lost");
  }
}
