package gapwise.curation;

import java.util.Objects;

/** How a study stands in the evidence base when another version of it comes in. */
public sealed interface Standing {
  /** There never was one of this name. */
  record Unknown() implements Standing {}

  /**
   * It stands there.
   *
   * @param kept as it stands
   */
  record Kept(KeptStudy kept) implements Standing {
    public Kept {
      Objects.requireNonNull(kept, "kept");
    }
  }

  /**
   * There was one, and a person withdrew it.
   *
   * @param stamp who, when and why
   */
  record Withdrawn(VersionStamp stamp) implements Standing {
    public Withdrawn {
      Objects.requireNonNull(stamp, "stamp");
    }
  }

  /**
   * Its record is damaged, so that nobody can say what it holds; bringing it in again mends it.
   *
   * @param stamp of the damaged version
   */
  record Damaged(VersionStamp stamp) implements Standing {
    public Damaged {
      Objects.requireNonNull(stamp, "stamp");
    }
  }
}
