package gapwise.cohort;

import java.util.Objects;

/**
 * One reason for a proposal, or against it.
 *
 * @param fact what it is about
 * @param bearing what it says
 * @param sentence the same as a whole sentence
 */
public record Sign(Fact fact, Bearing bearing, String sentence) {
  public Sign {
    Objects.requireNonNull(fact, "fact");
    Objects.requireNonNull(bearing, "bearing");
    Objects.requireNonNull(sentence, "sentence");
  }

  static Sign agrees(Fact fact, String sentence) {
    return new Sign(fact, Bearing.AGREES, sentence);
  }

  static Sign against(Fact fact, String sentence) {
    return new Sign(fact, Bearing.SPEAKS_AGAINST, sentence);
  }

  static Sign unknown(Fact fact, String sentence) {
    return new Sign(fact, Bearing.UNKNOWN, sentence);
  }
}
