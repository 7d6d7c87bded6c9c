package gapwise.reference.format;

import gapwise.problem.Problem;
import java.util.List;
import java.util.Optional;

/**
 * A record parted from its file, not yet understood.
 *
 * @param number from 1
 * @param line its first line
 * @param id its name, where the format gives it one apart from its fields
 * @param kind word for its kind, likewise
 * @param fields its fields in their order
 * @param doubts what was doubtful when it was parted
 * @param broken why it cannot be read, if so
 */
record RawRecord(
    int number,
    int line,
    Optional<String> id,
    Optional<String> kind,
    List<RawField> fields,
    List<Problem> doubts,
    Optional<Problem> broken) {
  RawRecord {
    fields = List.copyOf(fields);
    doubts = List.copyOf(doubts);
  }
}
