package gapwise.place;

import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where the case stands among the series of one method.
 *
 * @param method the method
 * @param own whether it is the method of the case
 * @param series series pooled
 * @param people patients or limbs in them, such as "61 patients"
 * @param newBelow share of new series, 0 to 1, whose true average is expected below the case, all
 *     lengths together; empty under two series
 * @param seriesBelow series whose own average is below the case
 * @param length what was made of the length of missing bone
 * @param patients patients reported one by one; empty where none can be counted
 * @param unpooled series that give a value without what pooling needs; empty where there are none
 * @param average pooled average; empty where there is none
 * @param prediction where a new series may lie, from five series on
 * @param like how many of the series had such a bone and infection; may be empty
 */
public record MethodPlace(
    Method method,
    boolean own,
    int series,
    String people,
    OptionalDouble newBelow,
    int seriesBelow,
    ByLength length,
    Optional<Below> patients,
    Optional<Below> unpooled,
    Optional<Estimate> average,
    Optional<Limits> prediction,
    String like) {
  /** Fewer series give no share: one says nothing of how further ones differ. */
  public static final int FEWEST = 2;

  /** Fewer series with a length give no line to adjust by (common practice, no source). */
  public static final int FEWEST_WITH_LENGTH = 10;

  public MethodPlace {
    Objects.requireNonNull(method, "method");
    Objects.requireNonNull(people, "people");
    Objects.requireNonNull(newBelow, "newBelow");
    Objects.requireNonNull(length, "length");
    Objects.requireNonNull(patients, "patients");
    Objects.requireNonNull(unpooled, "unpooled");
    Objects.requireNonNull(average, "average");
    Objects.requireNonNull(prediction, "prediction");
    Objects.requireNonNull(like, "like");
    if (series < 1 || seriesBelow < 0 || seriesBelow > series) {
      throw new IllegalArgumentException(seriesBelow + " of " + series + " series cannot be below");
    }
  }

  /**
   * So many of so many.
   *
   * @param below how many are below the case
   * @param all how many there are, 1 or more
   */
  public record Below(int below, int all) {
    public Below {
      if (all < 1 || below < 0 || below > all) {
        throw new IllegalArgumentException(below + " of " + all + " cannot be below");
      }
    }
  }

  /** What was made of the length of missing bone. */
  public sealed interface ByLength {
    /**
     * Adjusted: the share among new series whose mean length is that of the case.
     *
     * @param newBelow from 0 to 1
     * @param series series with a length
     */
    record Adjusted(double newBelow, int series) implements ByLength {}

    /**
     * Not adjusted.
     *
     * @param why a sentence
     */
    record NotAdjusted(String why) implements ByLength {}
  }

  /** The share that is told first: adjusted for length where that could be done. */
  public OptionalDouble told() {
    return length instanceof ByLength.Adjusted adjusted
        ? OptionalDouble.of(adjusted.newBelow())
        : newBelow;
  }
}
