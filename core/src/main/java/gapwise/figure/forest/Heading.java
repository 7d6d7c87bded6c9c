package gapwise.figure.forest;

import gapwise.figure.value.Check;
import java.util.List;
import java.util.Objects;

/**
 * The words over a figure.
 *
 * @param title what is shown: "Limbs united without further grafting, of 100"
 * @param sentences the result in sentences, and whether groups may be compared; numbers in them
 *     come from {@code Shown}
 * @param counts heading of the column of counts: "United"
 * @param values heading of the column of values: "Estimate (95 %)"
 */
public record Heading(String title, List<String> sentences, String counts, String values) {
  public Heading {
    Check.words(title, "title");
    sentences = List.copyOf(sentences);
    Objects.requireNonNull(counts, "counts");
    Objects.requireNonNull(values, "values");
  }
}
