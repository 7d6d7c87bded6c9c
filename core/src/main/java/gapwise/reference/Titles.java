package gapwise.reference;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Titles of one paper.
 *
 * @param main title as printed, without a full stop at its end; never empty
 * @param original title in the language of the paper, where the main one is a translation
 * @param others further titles that the record gives
 */
public record Titles(String main, Optional<String> original, List<String> others) {
  public Titles {
    Objects.requireNonNull(original, "original");
    others = List.copyOf(others);
    if (main.isBlank()) {
      throw new IllegalArgumentException("a reference needs a title");
    }
  }
}
