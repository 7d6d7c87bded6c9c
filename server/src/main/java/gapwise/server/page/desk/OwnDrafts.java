package gapwise.server.page.desk;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.Drafts;
import gapwise.desk.KeptDraft;
import gapwise.screening.Reader;
import gapwise.server.account.Actor;
import gapwise.server.address.PagePaths;
import gapwise.server.page.extraction.Person;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.Optional;

/**
 * Keeps a draft of one of two people who extract a paper apart to her alone: whoever else names it
 * is told that there is none. Its address cannot be guessed and is shown to her only; who asks is
 * told by {@link Person}, at this one place for every address below a draft.
 */
public final class OwnDrafts {
  private static final String BELOW = PagePaths.DESK + "/";

  private final Drafts drafts;

  public OwnDrafts(Drafts drafts) {
    this.drafts = Objects.requireNonNull(drafts, "drafts");
  }

  /** Refuses an address of another person's draft. */
  public void check(Context context) {
    if (!context.path().startsWith(BELOW) || Actor.now().way() == Actor.Way.NOBODY) {
      return;
    }
    String id = named(context.path());
    Optional<String> owner = drafts.find(id).map(KeptDraft::draft).flatMap(draft -> draft.reader());
    if (owner.isPresent() && !mayOpen(owner.get(), Person.of(context))) {
      throw new NotFoundResponse(say("desk.no-draft"));
    }
  }

  /** The draft that an address names, as a route reads it, however its letters are written. */
  private static String named(String path) {
    String written = path.substring(BELOW.length()).split("/", 2)[0];
    return URLDecoder.decode(written.replace("+", "%2B"), StandardCharsets.UTF_8);
  }

  /** Whoever has the address is taken for its person unless she says that she is another. */
  private static boolean mayOpen(String owner, Optional<Reader> asks) {
    return asks.isEmpty()
        || Reader.of(owner).filter(own -> own.key().equals(asks.get().key())).isPresent();
  }
}
