package gapwise.reference.format;

import gapwise.problem.Problem;

/** Takes records as they are parted from a file. */
interface RecordTaker {
  /** A record, in the order of the file. */
  void record(RawRecord record);

  /** Something about the file as a whole. */
  void file(Problem problem);
}
