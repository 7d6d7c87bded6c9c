package gapwise.review;

import java.util.Arrays;
import java.util.List;

/**
 * A field that differs between two versions of a review.
 *
 * @param before what it said; empty for nothing
 * @param after what it says
 */
public record ReviewChange(ReviewField field, String before, String after) {
  /** What differs, in the order of the fields. */
  public static List<ReviewChange> between(Review before, Review after) {
    return Arrays.stream(ReviewField.values())
        .map(field -> new ReviewChange(field, field.of(before), field.of(after)))
        .filter(change -> !change.before().equals(change.after()))
        .toList();
  }
}
