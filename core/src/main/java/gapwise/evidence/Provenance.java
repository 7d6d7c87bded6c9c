package gapwise.evidence;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Where numbers stand in the paper, and the words around them.
 *
 * @param place such as "Table 2" or "p. 411"
 * @param words as reported
 * @param readings where single numbers were read on the pages of the paper
 */
public record Provenance(Optional<String> place, Optional<String> words, List<Reading> readings) {
  /** Not noted. */
  public static final Provenance NOWHERE =
      new Provenance(Optional.empty(), Optional.empty(), List.of());

  public Provenance {
    Objects.requireNonNull(place, "place");
    Objects.requireNonNull(words, "words");
    readings = List.copyOf(readings);
  }

  /** Without places on pages. */
  public Provenance(Optional<String> place, Optional<String> words) {
    this(place, words, List.of());
  }
}
