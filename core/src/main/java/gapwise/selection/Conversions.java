package gapwise.selection;

import gapwise.evidence.vocabulary.Coded;

/**
 * Whether numbers that a paper does not print are worked out from those that it does: a standard
 * deviation from a standard error, an interval, quartiles or a range; a mean from a median.
 */
public enum Conversions implements Coded {
  /** Wherever what is printed allows it, marked in the row. */
  ALL("all", "worked out where it can be"),
  /** Nowhere: means with a printed standard deviation alone are pooled. */
  NONE("none", "as printed alone");

  private final String code;
  private final String label;

  Conversions(String code, String label) {
    this.code = code;
    this.label = label;
  }

  @Override
  public String code() {
    return code;
  }

  @Override
  public String label() {
    return label;
  }
}
