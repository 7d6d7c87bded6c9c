package gapwise.evidence.rule;

/** How bad a finding is. */
public enum Severity {
  /** Cannot be; the record is refused until it is corrected. */
  IMPOSSIBLE,
  /** May be, but is more often a slip; a person must say that it stands in the paper. */
  DOUBTFUL,
  /** Read from the words of a paper; it stands and stops nothing, until a person says better. */
  PROPOSED
}
