package gapwise.extraction;

import com.fasterxml.jackson.annotation.JsonIgnore;
import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Ids;
import gapwise.evidence.Study;
import gapwise.screening.Reader;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A paper that two people extract apart, and how far they are. It says nothing of what they read.
 *
 * @param study id of the study that it becomes
 * @param reference id of the kept reference that it was opened from
 * @param title the title as far as it is known; may be empty
 * @param first who extracts it
 * @param second who extracts it too; another person
 * @param settler who shall settle what differs, where that was said
 * @param opened who opened it, and when
 * @param handedIn what was handed in so far, at most one of each of the two
 * @param settling who began to settle it; from then on nothing is handed in any more
 * @param finished the agreed record that came of it
 */
public record TwiceRead(
    String study,
    Optional<String> reference,
    String title,
    Reader first,
    Reader second,
    Optional<Reader> settler,
    Opened opened,
    List<HandedIn> handedIn,
    Optional<Settling> settling,
    Optional<Finished> finished) {
  /** Longest title that is kept here. */
  public static final int LONGEST_TITLE = 600;

  public TwiceRead {
    Objects.requireNonNull(reference, "reference");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(settler, "settler");
    Objects.requireNonNull(opened, "opened");
    handedIn = List.copyOf(handedIn);
    Objects.requireNonNull(settling, "settling");
    Objects.requireNonNull(finished, "finished");
    if (!Ids.isId(study)) {
      throw new IllegalArgumentException("not the id of a study: '" + study + "'");
    }
    if (title.length() > LONGEST_TITLE) {
      throw new IllegalArgumentException("a title of " + title.length() + " letters");
    }
    if (first.key().equals(second.key())) {
      throw new IllegalArgumentException("two people extract a paper, both were " + first.name());
    }
    if (settling.isPresent() && handedIn.size() < Side.values().length) {
      throw new IllegalArgumentException("nothing is settled before both have handed in");
    }
    if (finished.isPresent() && settling.isEmpty()) {
      throw new IllegalArgumentException("nothing is agreed that nobody began to settle");
    }
  }

  /** Who opened it. */
  public record Opened(Reader who, Instant when) {}

  /**
   * An extraction that was handed in.
   *
   * @param version of the document that holds it
   */
  public record HandedIn(Reader reader, int version, Instant when) {}

  /**
   * The start of the reconciliation.
   *
   * @param who who settles
   * @param baseVersion the version of the study that the agreed record follows, 0 for a new one
   */
  public record Settling(Reader who, int baseVersion, Instant when) {}

  /**
   * The end of it.
   *
   * @param version of the study that holds the agreed record
   * @param content SHA-256 of the study as it was agreed, in hexadecimal
   * @param why what the person who settled said of it as a whole
   */
  public record Finished(Reader who, int version, String content, String why, Instant when) {
    /** Whether a study is still what was agreed. */
    public boolean holds(Study study) {
      return content.equals(contentOf(study));
    }

    /** What tells a study from any other. */
    public static String contentOf(Study study) {
      try {
        byte[] json = EvidenceJson.write(study).getBytes(StandardCharsets.UTF_8);
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(json));
      } catch (NoSuchAlgorithmException missing) {
        throw new IllegalStateException("every Java has SHA-256", missing);
      }
    }
  }

  /** How far it is. */
  public enum Stage {
    /** One of the two has not handed in. */
    BEING_READ,
    /** Both have, and nobody has looked at both. */
    READ_TWICE,
    /** What differs is being settled. */
    BEING_SETTLED,
    /** The agreed record stands. */
    AGREED
  }

  /** A paper of which nothing is extracted yet. */
  public static TwiceRead opened(
      String study,
      Optional<String> reference,
      String title,
      Reader first,
      Reader second,
      Optional<Reader> settler,
      Opened opened) {
    return new TwiceRead(
        study,
        reference,
        title,
        first,
        second,
        settler,
        opened,
        List.of(),
        Optional.empty(),
        Optional.empty());
  }

  /** How far it is. */
  @JsonIgnore
  public Stage stage() {
    if (finished.isPresent()) {
      return Stage.AGREED;
    }
    if (settling.isPresent()) {
      return Stage.BEING_SETTLED;
    }
    return handedIn.size() < Side.values().length ? Stage.BEING_READ : Stage.READ_TWICE;
  }

  /** Whether both extractions may be shown: never before both stand and can change no more. */
  @JsonIgnore
  public boolean isOpenToAll() {
    return settling.isPresent();
  }

  /** The person of a side. */
  public Reader reader(Side side) {
    return side == Side.FIRST ? first : second;
  }

  /** The side of a person; empty for anybody else. */
  public Optional<Side> side(Reader reader) {
    if (reader.key().equals(first.key())) {
      return Optional.of(Side.FIRST);
    }
    return reader.key().equals(second.key()) ? Optional.of(Side.SECOND) : Optional.empty();
  }

  /** What the person of a side handed in. */
  public Optional<HandedIn> handedIn(Side side) {
    String key = reader(side).key();
    return handedIn.stream().filter(one -> one.reader().key().equals(key)).findFirst();
  }

  /**
   * With an extraction handed in, in the place of an earlier one of the same person.
   *
   * @throws IllegalStateException where it is being settled
   */
  public TwiceRead with(HandedIn one) {
    if (settling.isPresent()) {
      throw new IllegalStateException("what is being settled takes no other extraction");
    }
    List<HandedIn> all = new ArrayList<>(handedIn);
    all.removeIf(before -> before.reader().key().equals(one.reader().key()));
    all.add(one);
    return but(all, settling, finished);
  }

  /** With somebody who settles what differs. */
  public TwiceRead with(Settling begun) {
    return but(handedIn, Optional.of(begun), finished);
  }

  /** With the agreed record. */
  public TwiceRead with(Finished end) {
    return but(handedIn, settling, Optional.of(end));
  }

  private TwiceRead but(
      List<HandedIn> handed, Optional<Settling> begun, Optional<Finished> finishedNow) {
    return new TwiceRead(
        study, reference, title, first, second, settler, opened, handed, begun, finishedNow);
  }
}
