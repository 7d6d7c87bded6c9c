package gapwise.curation;

import gapwise.reference.kept.KeptJson;
import gapwise.screening.Protocol;
import gapwise.screening.Ruling;
import gapwise.screening.Vote;
import gapwise.store.DocumentStore;
import gapwise.store.DocumentVersion;
import gapwise.store.Write;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiConsumer;

/**
 * Keeps what people chose of references, what was settled where they differed, and the protocol
 * they follow, each with its whole history. What one chose stands under her own name, so that two
 * who choose at the same moment never meet. Safe for use by many threads.
 */
public final class ScreeningBase {
  /** Kind of the documents that hold what one person chose of one reference. */
  public static final String VOTE = "screening-vote";

  /** Kind of the documents that hold what was settled. */
  public static final String RULING = "screening-ruling";

  /** Kind of the document that holds the protocol; there is one. */
  public static final String PROTOCOL = "screening-protocol";

  /** Key of the protocol. */
  public static final String THE_PROTOCOL = "protocol";

  private final DocumentStore store;

  public ScreeningBase(DocumentStore store) {
    this.store = Objects.requireNonNull(store, "store");
  }

  /** Keeps a vote; the one before it of the same person stays in the history. */
  public void vote(Vote vote) {
    store.write(
        List.of(Write.put(VOTE, vote.key(), KeptJson.write(vote))),
        vote.reader().name(),
        "screened by " + vote.stage().label().toLowerCase(Locale.ROOT));
  }

  /** Keeps what was settled. */
  public void settle(Ruling ruling) {
    store.write(
        List.of(Write.put(RULING, ruling.key(), KeptJson.write(ruling))),
        ruling.who().name(),
        ruling.why());
  }

  /**
   * Keeps the protocol, if nobody has changed it since it was read.
   *
   * @param seen the version that was read, 0 for none
   * @return whether it was kept
   */
  public boolean keep(Protocol protocol, String who, String why, int seen) {
    Write write = Write.put(PROTOCOL, THE_PROTOCOL, KeptJson.write(protocol)).expecting(seen);
    return store.write(List.of(write), who, why).written().isPresent();
  }

  /** Which version of the protocol stands; 0 where none was kept. */
  public int protocolVersion() {
    return store.latest(PROTOCOL, THE_PROTOCOL).map(DocumentVersion::version).orElse(0);
  }

  /** The protocol; the usual one where none was kept. */
  public Protocol protocol() {
    return store
        .latest(PROTOCOL, THE_PROTOCOL)
        .filter(document -> !document.damaged())
        .flatMap(DocumentVersion::json)
        .map(json -> KeptJson.read(json, Protocol.class))
        .orElse(Protocol.USUAL);
  }

  /** All votes, the last of each person. */
  public List<Vote> votes() {
    List<Vote> votes = new ArrayList<>();
    each(VOTE, Vote.class, (vote, document) -> votes.add(vote));
    return votes;
  }

  /** All that was settled. */
  public List<Ruling> rulings() {
    List<Ruling> rulings = new ArrayList<>();
    each(RULING, Ruling.class, (ruling, document) -> rulings.add(ruling));
    return rulings;
  }

  private <T> void each(String kind, Class<T> type, BiConsumer<T, DocumentVersion> taker) {
    store.forEachLatest(
        kind,
        document -> {
          if (!document.damaged()) {
            taker.accept(KeptJson.read(document.json().orElseThrow(), type), document);
          }
        });
  }

  /** What has changed after a change. */
  public interface Changes {
    /** A vote was made anew. */
    void vote(Vote vote);

    /** Something was settled. */
    void ruling(Ruling ruling);
  }

  /**
   * Passes on what was written after a change.
   *
   * @return the number of the last change that was passed on
   */
  public long changesAfter(long change, Changes taker) {
    long[] last = {change};
    store.changesAfter(
        change,
        document -> {
          last[0] = Math.max(last[0], document.change());
          String kind = document.id().kind();
          if (!document.damaged() && document.json().isPresent()) {
            if (kind.equals(VOTE)) {
              taker.vote(KeptJson.read(document.json().get(), Vote.class));
            } else if (kind.equals(RULING)) {
              taker.ruling(KeptJson.read(document.json().get(), Ruling.class));
            }
          }
        });
    return last[0];
  }

  /** Number of the last change of the store, 0 when there is none. */
  public long lastChange() {
    return store.lastChange();
  }

  /** When a change was made; empty when there is none of this number. */
  public Optional<Instant> changedAt(long change) {
    return store.changedAt(change);
  }
}
