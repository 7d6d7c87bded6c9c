package gapwise.synthesis.patients;

import java.util.Locale;

/** A coefficient of the models of this room. */
public enum Term {
  /** Outcome at the centre of the moderator, in the middle study. */
  INTERCEPT,
  /** Slope among patients of one study. */
  WITHIN,
  /** Slope of studies' outcomes on their mean moderator. */
  ACROSS,
  /** Slope across less slope within: what ecological bias would be. */
  DIFFERENCE;

  /** The word in a result. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
