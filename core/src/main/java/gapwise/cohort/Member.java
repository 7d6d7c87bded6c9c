package gapwise.cohort;

import java.util.Comparator;
import java.util.Objects;
import java.util.Optional;

/**
 * A study, or one group of it.
 *
 * @param study id of the study
 * @param arm id of the group; empty for the whole study
 */
public record Member(String study, Optional<String> arm) implements Comparable<Member> {
  private static final Comparator<Member> ORDER =
      Comparator.comparing(Member::study).thenComparing(member -> member.arm().orElse(""));

  public Member {
    Objects.requireNonNull(study, "study");
    Objects.requireNonNull(arm, "arm");
  }

  static Member of(String study) {
    return new Member(study, Optional.empty());
  }

  /** Reads {@code study} or {@code study/arm}; no id has a slash in it. */
  public static Member parse(String text) {
    int slash = text.indexOf('/');
    return slash < 0
        ? of(text)
        : new Member(text.substring(0, slash), Optional.of(text.substring(slash + 1)));
  }

  @Override
  public int compareTo(Member other) {
    return ORDER.compare(this, other);
  }

  /** {@code study} or {@code study/arm}. */
  @Override
  public String toString() {
    return arm.map(id -> study + "/" + id).orElse(study);
  }
}
