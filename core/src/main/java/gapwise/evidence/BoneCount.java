package gapwise.evidence;

import gapwise.evidence.vocabulary.Bone;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * A bone among the defects of an arm.
 *
 * @param bone which
 * @param count how many, empty where the paper only names the bone
 */
public record BoneCount(Bone bone, OptionalInt count) {
  public BoneCount {
    Objects.requireNonNull(bone, "bone");
    Objects.requireNonNull(count, "count");
    if (count.isPresent() && count.getAsInt() < 0) {
      throw new IllegalArgumentException("a count must not be negative, was " + count.getAsInt());
    }
  }
}
