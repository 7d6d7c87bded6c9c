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
   * @param compared how its studies stood beside the base before
   * @param proposals what was read from words of papers and nobody has confirmed
   */
  record Stored(ImportRecord record, Compared compared, List<Warning> proposals) implements Taken {
    public Stored {
      Objects.requireNonNull(record, "record");
      Objects.requireNonNull(compared, "compared");
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
   * Nothing is wrong, but something waits for a person: a doubt that nobody has acknowledged, or a
   * study that would take the place of another content and to which nobody has agreed.
   *
   * @param open the doubts
   * @param changes how many changes nobody has agreed to; what they are, the listener was told
   * @param compared how its studies stand beside the base
   */
  record Asks(List<Warning> open, int changes, Compared compared) implements Taken {
    public Asks {
      open = List.copyOf(open);
      Objects.requireNonNull(compared, "compared");
      if (open.isEmpty() && changes == 0) {
        throw new IllegalArgumentException("what asks nothing needs no person");
      }
    }

    /** The doubts by kind. */
    public List<NotedKind> kinds() {
      return NotedKind.of(List.of(), open);
    }
  }

  /**
   * Others changed the base so often meanwhile that the comparison never held until it could be
   * stored. Nothing of it is.
   */
  record Overtaken() implements Taken {}
}
