package gapwise.review;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * One version of a review.
 *
 * @param review what it says
 * @param version 1 for the first
 * @param when when it was written
 * @param who who wrote it
 * @param why the reason given
 * @param work how far the work had come
 */
public record ReviewVersion(
    Review review, int version, Instant when, String who, String why, WorkSoFar work) {
  public ReviewVersion {
    Objects.requireNonNull(review, "review");
    Objects.requireNonNull(when, "when");
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(why, "why");
    Objects.requireNonNull(work, "work");
  }

  /**
   * A version with what changed in it.
   *
   * @param changes against the one before, none of the first
   */
  public record Step(ReviewVersion version, List<ReviewChange> changes) {
    public Step {
      changes = List.copyOf(changes);
    }

    /** Whether the protocol was changed after screening or extraction had begun. */
    public boolean isAmendment() {
      return version.work().hasBegun()
          && changes.stream().anyMatch(change -> change.field().isOfProtocol());
    }

    /** Whether the protocol itself was written only after that. */
    public boolean isLate() {
      return changes.isEmpty() && version.version() == 1 && version.work().hasBegun();
    }
  }

  /**
   * All versions with what changed in each, the last one first.
   *
   * @param versions the first one first
   */
  public static List<Step> steps(List<ReviewVersion> versions) {
    List<Step> steps = new ArrayList<>();
    for (int i = 0; i < versions.size(); i++) {
      List<ReviewChange> changes =
          i == 0
              ? List.of()
              : ReviewChange.between(versions.get(i - 1).review(), versions.get(i).review());
      steps.add(0, new Step(versions.get(i), changes));
    }
    return List.copyOf(steps);
  }
}
