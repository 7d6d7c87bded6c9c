package gapwise.server.page.desk;

import static gapwise.sentence.Sentences.say;

import gapwise.curation.ExtractionBase;
import gapwise.desk.AgreedDraft;
import gapwise.desk.Draft;
import gapwise.desk.DraftCheck;
import gapwise.desk.KeptDraft;
import gapwise.desk.Noted;
import gapwise.extraction.Extraction;
import gapwise.screening.Reader;
import gapwise.server.home.Home;
import gapwise.server.page.extraction.ExtractionAddress;
import io.javalin.http.ConflictResponse;
import io.javalin.http.ForbiddenResponse;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;

/**
 * Hands in what one of two people extracted of a paper: by the same rules as every draft, but it
 * becomes no evidence. Until somebody begins to settle what differs it may be handed in again.
 */
record ApartHandIn(Home home, Clock clock) {
  /**
   * Keeps it.
   *
   * @return address of the paper; empty where something in it is wrong, or doubtful and not settled
   */
  Optional<String> handIn(KeptDraft kept, DraftCheck check, SettledForm by) {
    Draft draft = kept.draft();
    Reader reader = Reader.of(draft.reader().orElseThrow()).orElseThrow();
    if (Reader.of(by.who()).filter(who -> who.key().equals(reader.key())).isEmpty()) {
      throw new ForbiddenResponse(say("extraction.own-alone", Map.of("name", reader.name())));
    }
    ExtractionBase.Kept paper =
        home.extractions()
            .find(draft.study())
            .filter(one -> one.paper().side(reader).isPresent())
            .orElseThrow(() -> new ConflictResponse(say("extraction.no-paper")));
    if (paper.paper().isOpenToAll()) {
      throw new ConflictResponse(say("extraction.settling-already"));
    }
    boolean stopped =
        check.count(Noted.Weight.IMPOSSIBLE)
                + check.count(Noted.Weight.NEEDED)
                + check.count(Noted.Weight.DOUBT)
            > 0;
    if (stopped || check.study().isEmpty()) {
      return Optional.empty();
    }
    Extraction extraction =
        Extraction.of(
            check.study().get(), reader, draft.paper(), AgreedDraft.doubts(draft), clock.instant());
    if (!home.extractions().base().handIn(paper, extraction, by.why())) {
      throw new ConflictResponse(say("extraction.changed-meanwhile"));
    }
    return Optional.of(ExtractionAddress.of(draft.study()));
  }
}
