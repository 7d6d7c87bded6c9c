package gapwise.evidence;

import gapwise.evidence.vocabulary.ApartReason;
import java.util.Objects;
import java.util.Optional;

/**
 * That a group is kept and shown, and never pooled: its patients had tumours, say, or are those in
 * whom a method had failed.
 *
 * @param reason of what kind the reason is
 * @param words the reason in words
 */
public record KeptApart(ApartReason reason, Optional<String> words) {
  public KeptApart {
    Objects.requireNonNull(reason, "reason");
    Objects.requireNonNull(words, "words");
  }
}
