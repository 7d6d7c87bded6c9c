package gapwise.review;

import gapwise.evidence.vocabulary.Design;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Which studies a review takes, as far as it can be told by a code or a number.
 *
 * @param designs by design; empty takes every one
 * @param lengthFromCentimetres least missing length; empty for none
 * @param lengthToCentimetres greatest missing length; empty for none
 * @param yearFrom first year of publication; empty for none
 * @param yearTo last year of publication; empty for none
 * @param languages in words; empty text where it is not said
 */
public record ReviewLimits(
    List<Design> designs,
    OptionalDouble lengthFromCentimetres,
    OptionalDouble lengthToCentimetres,
    OptionalInt yearFrom,
    OptionalInt yearTo,
    String languages) {
  /** Longest words about languages. */
  public static final int LONGEST_LANGUAGES = 200;

  /** Everything is taken. */
  public static final ReviewLimits NONE =
      new ReviewLimits(
          List.of(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalInt.empty(),
          OptionalInt.empty(),
          "");

  public ReviewLimits {
    designs = designs.stream().distinct().sorted().toList();
    Objects.requireNonNull(languages, "languages");
    if (languages.length() > LONGEST_LANGUAGES) {
      throw new IllegalArgumentException(
          "more than " + LONGEST_LANGUAGES + " letters of languages");
    }
    if (lengthFromCentimetres.orElse(0) < 0
        || lengthFromCentimetres.orElse(0) > lengthToCentimetres.orElse(Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("the missing length ends before it begins");
    }
    if (yearFrom.orElse(Integer.MIN_VALUE) > yearTo.orElse(Integer.MAX_VALUE)) {
      throw new IllegalArgumentException("the years end before they begin");
    }
  }
}
