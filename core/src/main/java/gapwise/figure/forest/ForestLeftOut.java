package gapwise.figure.forest;

import gapwise.figure.span.Span;
import gapwise.figure.value.Check;
import java.util.Objects;
import java.util.Optional;

/**
 * A series that could not enter, listed at the foot of the figure with its reason.
 *
 * @param study label with year
 * @param span missing bone as reported
 * @param counts the counts in words; empty for none
 * @param reason why, as words for people
 * @param href link of the label: a relative address or http(s)
 */
record ForestLeftOut(String study, Span span, String counts, String reason, Optional<String> href) {
  ForestLeftOut {
    Check.words(study, "study");
    Objects.requireNonNull(span, "span");
    Objects.requireNonNull(counts, "counts");
    Check.words(reason, "reason");
    Link.check(href);
  }
}
