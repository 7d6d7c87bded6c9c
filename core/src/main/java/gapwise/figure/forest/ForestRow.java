package gapwise.figure.forest;

import gapwise.figure.span.Span;
import gapwise.figure.value.Check;
import gapwise.figure.value.Estimate;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One series of a forest plot.
 *
 * @param study label with year, such as "Invented series 03, Alder Bay 2012"
 * @param detail arm or design for a second line; empty for none
 * @param span missing bone as reported
 * @param counts the counts in words: "27 of 31"; empty for none
 * @param estimate value with interval
 * @param weightPercent share of information, 0 to 100; empty where the model has no weights, then
 *     all lenses are drawn alike
 * @param openEnd the bound of the scale that the value lies on, if any
 * @param href link of the label: a relative address or http(s)
 * @param citation where it was published, for the table and the file's own words; empty for none
 */
public record ForestRow(
    String study,
    String detail,
    Span span,
    String counts,
    Estimate estimate,
    OptionalDouble weightPercent,
    OpenEnd openEnd,
    Optional<String> href,
    String citation) {

  /** Whether the value lies on a bound, so that its interval has one real limit only. */
  public enum OpenEnd {
    /** Between the bounds. */
    NONE,
    /** Nowhere an event (0 of 100): the lower limit is the bound itself. */
    LOW,
    /** Everywhere an event (100 of 100): the upper limit is the bound itself. */
    HIGH
  }

  public ForestRow {
    Check.words(study, "study");
    Objects.requireNonNull(detail, "detail");
    Objects.requireNonNull(span, "span");
    Objects.requireNonNull(counts, "counts");
    Objects.requireNonNull(estimate, "estimate");
    Objects.requireNonNull(openEnd, "openEnd");
    Link.check(href);
    Objects.requireNonNull(citation, "citation");
    if (weightPercent.isPresent()
        && !(weightPercent.getAsDouble() >= 0 && weightPercent.getAsDouble() <= 100)) {
      throw new IllegalArgumentException(
          "weightPercent must lie from 0 to 100, was " + weightPercent.getAsDouble());
    }
  }

  /** A series without a citation. */
  public ForestRow(
      String study,
      String detail,
      Span span,
      String counts,
      Estimate estimate,
      OptionalDouble weightPercent,
      OpenEnd openEnd,
      Optional<String> href) {
    this(study, detail, span, counts, estimate, weightPercent, openEnd, href, "");
  }
}
