package gapwise.intake;

import gapwise.curation.ImportRecord;
import gapwise.exchange.Warning;
import gapwise.problem.Problem;
import java.util.List;
import java.util.Objects;

/** What became of a template. Only {@link Stored} changed anything. */
public sealed interface Taken {

  /**
   * All of it is stored.
   *
   * @param record what is remembered of the import
   * @param studies ids of its studies, in its order
   * @param proposals what was read from words of papers and nobody has confirmed
   */
  record Stored(ImportRecord record, List<String> studies, List<Warning> proposals)
      implements Taken {
    public Stored {
      Objects.requireNonNull(record, "record");
      studies = List.copyOf(studies);
      proposals = List.copyOf(proposals);
    }

    /** The proposals by kind. */
    public List<NotedKind> kinds() {
      return NotedKind.of(List.of(), proposals);
    }
  }

  /**
   * Something is wrong.
   *
   * @param problems all that is wrong, at least one
   * @param doubts what is doubtful besides, in the studies that could be read whole
   */
  record Wrong(List<Problem> problems, List<Warning> doubts) implements Taken {
    public Wrong {
      problems = List.copyOf(problems);
      doubts = List.copyOf(doubts);
    }

    /** All of it by kind, what is wrong first. */
    public List<NotedKind> kinds() {
      return NotedKind.of(problems, doubts);
    }
  }

  /**
   * Nothing is wrong, but something is doubtful that nobody has acknowledged.
   *
   * @param studies how many studies it holds
   * @param open the doubts, at least one
   */
  record Doubtful(int studies, List<Warning> open) implements Taken {
    public Doubtful {
      open = List.copyOf(open);
    }

    /** The doubts by kind. */
    public List<NotedKind> kinds() {
      return NotedKind.of(List.of(), open);
    }
  }
}
