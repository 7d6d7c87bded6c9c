package gapwise.exchange;

import gapwise.evidence.Study;
import gapwise.problem.Problem;
import java.util.List;

/** What came of reading a filled template. Only {@link Ready} holds anything to store. */
public sealed interface Imported {
  /**
   * Everything doubtful in it, acknowledged now or not; without what earlier imports acknowledged
   * and what stands in the evidence base with the same content.
   */
  List<Warning> warnings();

  /**
   * All is right.
   *
   * @param studies in the order of the sheet
   * @param warnings doubts that were acknowledged, and proposals
   */
  record Ready(List<Study> studies, List<Warning> warnings) implements Imported {
    public Ready {
      studies = List.copyOf(studies);
      warnings = List.copyOf(warnings);
    }
  }

  /**
   * Nothing is wrong, but something is doubtful that nobody has acknowledged yet.
   *
   * @param read the studies that it holds, not to be stored yet
   * @param warnings all doubts and proposals
   * @param open the doubts that are not acknowledged, at least one
   */
  record NeedsAcknowledgement(List<Study> read, List<Warning> warnings, List<Warning> open)
      implements Imported {
    public NeedsAcknowledgement {
      read = List.copyOf(read);
      warnings = List.copyOf(warnings);
      open = List.copyOf(open);
    }
  }

  /**
   * Something is wrong; nothing of it may be stored.
   *
   * @param problems all that is wrong, at least one
   * @param warnings what is doubtful in the studies that could be read whole
   */
  record Wrong(List<Problem> problems, List<Warning> warnings) implements Imported {
    public Wrong {
      problems = List.copyOf(problems);
      warnings = List.copyOf(warnings);
    }
  }
}
