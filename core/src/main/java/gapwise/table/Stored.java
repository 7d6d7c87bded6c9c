package gapwise.table;

/** How the file kept a value. A CSV file keeps everything as {@link #TEXT}. */
public enum Stored {
  TEXT,
  NUMBER,
  /**
   * A date or time. Spreadsheets turn a typed "3-5" or "1/2" into one without asking, so a reader
   * who expects anything else should refuse the cell rather than guess what was typed.
   */
  DATE,
  /** TRUE or FALSE. */
  TRUTH_VALUE
}
