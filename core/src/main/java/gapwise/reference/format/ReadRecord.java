package gapwise.reference.format;

import gapwise.problem.Problem;
import gapwise.reference.Reference;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** What became of one record of a file. */
public sealed interface ReadRecord {
  /** Its number in the file, from 1; records that were refused count too. */
  int number();

  /** Its first line in the file, from 1. */
  int line();

  /** What is doubtful, or why it was refused, each with its place and what to do. */
  List<Problem> problems();

  /** The name that the file gives it. */
  Optional<String> id();

  /**
   * A record that was read; it is doubtful if there are problems.
   *
   * @param reference what it says
   */
  record Read(int number, int line, Reference reference, List<Problem> problems)
      implements ReadRecord {
    public Read {
      Objects.requireNonNull(reference, "reference");
      problems = List.copyOf(problems);
    }

    @Override
    public Optional<String> id() {
      return reference.id();
    }

    /** Whether a person should look at it. */
    public boolean isDoubtful() {
      return !problems.isEmpty();
    }
  }

  /** A record that stays out. */
  record Refused(int number, int line, Optional<String> id, List<Problem> problems)
      implements ReadRecord {
    public Refused {
      Objects.requireNonNull(id, "id");
      problems = List.copyOf(problems);
      if (problems.isEmpty()) {
        throw new IllegalArgumentException("a refusal needs a reason");
      }
    }
  }
}
