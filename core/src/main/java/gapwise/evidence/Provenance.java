package gapwise.evidence;

import java.util.Objects;
import java.util.Optional;

/**
 * Where a number stands in the paper, and the words around it.
 *
 * @param place such as "Table 2" or "p. 411"
 * @param words as reported
 */
public record Provenance(Optional<String> place, Optional<String> words) {
  /** Not noted. */
  public static final Provenance NOWHERE = new Provenance(Optional.empty(), Optional.empty());

  public Provenance {
    Objects.requireNonNull(place, "place");
    Objects.requireNonNull(words, "words");
  }
}
