package gapwise.cohort;

/** Whether a fact speaks for shared patients, against them, or is not given. */
public enum Bearing {
  AGREES,
  SPEAKS_AGAINST,
  UNKNOWN
}
