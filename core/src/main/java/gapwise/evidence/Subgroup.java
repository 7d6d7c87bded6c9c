package gapwise.evidence;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * A part of an arm that a paper reports apart. A subgroup is never counted together with the total
 * of its arm.
 *
 * @param words in the paper's words, such as "defect over 60 mm"
 * @param defectFromCentimetres shortest missing length in the subgroup, where it is a band of
 *     length
 * @param defectToCentimetres longest missing length in it
 */
public record Subgroup(
    String words, OptionalDouble defectFromCentimetres, OptionalDouble defectToCentimetres) {
  public Subgroup {
    Objects.requireNonNull(words, "words");
    Objects.requireNonNull(defectFromCentimetres, "defectFromCentimetres");
    Objects.requireNonNull(defectToCentimetres, "defectToCentimetres");
    if (words.isBlank()) {
      throw new IllegalArgumentException("a subgroup needs words");
    }
    if (defectFromCentimetres.isPresent()
        && defectToCentimetres.isPresent()
        && defectFromCentimetres.getAsDouble() > defectToCentimetres.getAsDouble()) {
      throw new IllegalArgumentException("a band of length must not end before it starts");
    }
  }
}
