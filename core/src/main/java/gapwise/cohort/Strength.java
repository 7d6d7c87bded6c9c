package gapwise.cohort;

/** How much a proposal stands on. No probability: nobody has counted how often each is right. */
public enum Strength {
  /** A number of the paper itself, rows of patients or a set of numbers agree. */
  STRONG,
  /** Several facts agree that seldom agree by chance together. */
  MODERATE,
  /** What is known fits, and something that would settle it is not given. */
  WEAK
}
