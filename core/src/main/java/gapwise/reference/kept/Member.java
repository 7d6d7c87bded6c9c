package gapwise.reference.kept;

import gapwise.evidence.Ids;
import gapwise.reference.pair.RecordKey;
import java.util.Optional;

/** How the two sides of a pair are written: a kept reference by its id, a study behind a word. */
public final class Member {
  private static final String STUDY = "study:";

  private Member() {}

  /** A study. */
  public static String ofStudy(String study) {
    return STUDY + study;
  }

  /** The id of the study, where the member is one. */
  public static Optional<String> study(String member) {
    return member.startsWith(STUDY)
        ? Optional.of(member.substring(STUDY.length()))
        : Optional.empty();
  }

  /** Whether a text is a member. */
  static boolean isMember(String text) {
    return study(text).map(Ids::isId).orElseGet(() -> KeptReference.isId(text));
  }

  /** One name for two, in either order. */
  static String key(String one, String other) {
    return one.compareTo(other) < 0 ? one + "+" + other : other + "+" + one;
  }

  /** The member that a compared record is: kept references carry their id in place of a file. */
  static String of(RecordKey key) {
    return key.file().equals(RecordKey.BASE) ? ofStudy(key.id().orElseThrow()) : key.file();
  }
}
