package gapwise.reference.pair;

import java.util.Objects;

/**
 * What became of a paper after it was printed.
 *
 * @param paper record of the paper, not of the notice
 * @param kind what became of it
 * @param sentence what is known, and from where
 */
public record Standing(RecordKey paper, Kind kind, String sentence) {
  /** Kinds of notices that change how a paper is used. */
  public enum Kind {
    RETRACTED("retracted"),
    CORRECTED("corrected"),
    CONCERN("concern");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    /** The word for files. */
    public String word() {
      return word;
    }
  }

  public Standing {
    Objects.requireNonNull(paper, "paper");
    Objects.requireNonNull(kind, "kind");
    if (sentence.isBlank()) {
      throw new IllegalArgumentException("a standing needs a sentence");
    }
  }
}
