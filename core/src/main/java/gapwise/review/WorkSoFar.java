package gapwise.review;

/**
 * How far the work had come when a version of a review was written.
 *
 * @param choices of people who screen, and what they settled
 * @param drafts of studies on the desk
 * @param studies in the evidence base
 */
public record WorkSoFar(int choices, int drafts, int studies) {
  public WorkSoFar {
    if (choices < 0 || drafts < 0 || studies < 0) {
      throw new IllegalArgumentException("counts are 0 or more");
    }
  }

  /** Whether screening or extraction had begun. */
  public boolean hasBegun() {
    return choices > 0 || drafts > 0 || studies > 0;
  }
}
