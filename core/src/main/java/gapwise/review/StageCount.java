package gapwise.review;

/**
 * What of a stage is done and what is not.
 *
 * @param done finished
 * @param waiting still to be done
 * @param apart of what was done, seen differently by another and not settled yet
 */
public record StageCount(int done, int waiting, int apart) {
  /** Nothing done, nothing waiting. */
  public static final StageCount NOTHING = new StageCount(0, 0, 0);

  public StageCount {
    if (done < 0 || waiting < 0 || apart < 0) {
      throw new IllegalArgumentException("counts are 0 or more");
    }
  }

  /** Whether there is nothing to tell. */
  public boolean isNothing() {
    return equals(NOTHING);
  }
}
