package gapwise.coverage;

/** One replicate. */
interface Drawn {
  /** What is true, in the numbers in which intervals are given. */
  double truth(Target target);
}
