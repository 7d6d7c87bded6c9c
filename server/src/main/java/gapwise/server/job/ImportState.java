package gapwise.server.job;

import gapwise.curation.ImportRecord;
import gapwise.exchange.Warning;
import gapwise.intake.Compared;
import gapwise.intake.NotedKind;
import gapwise.problem.Problem;
import java.util.List;
import java.util.Objects;

/** How far an import has come. */
public sealed interface ImportState {
  /** The code of the state in answers to programs. */
  String code();

  /** Whether it will not change by itself any more. */
  default boolean isSettled() {
    return true;
  }

  /** The files are being read and checked. */
  record Reading(long rows) implements ImportState {
    @Override
    public String code() {
      return "reading";
    }

    @Override
    public boolean isSettled() {
      return false;
    }
  }

  /**
   * Something is wrong; nothing was stored.
   *
   * @param doubts what is doubtful besides, to be looked up in the same go
   */
  record Wrong(List<Problem> problems, List<Warning> doubts) implements ImportState {
    public Wrong {
      problems = List.copyOf(problems);
      doubts = List.copyOf(doubts);
    }

    /** All of it by kind, what is wrong first. */
    public List<NotedKind> kinds() {
      return NotedKind.of(problems, doubts);
    }

    @Override
    public String code() {
      return "wrong";
    }
  }

  /**
   * Something is doubtful, or would replace what stands there, and waits for a person; nothing was
   * stored yet.
   *
   * @param open the doubts
   * @param changes the studies that would replace other content and to which nobody has agreed
   * @param compared how all its studies stand beside the base
   */
  record Asking(List<Warning> open, List<ChangedStudy> changes, Compared compared)
      implements ImportState {
    public Asking {
      open = List.copyOf(open);
      changes = List.copyOf(changes);
      Objects.requireNonNull(compared, "compared");
    }

    /** The doubts by kind. */
    public List<NotedKind> kinds() {
      return NotedKind.of(List.of(), open);
    }

    @Override
    public String code() {
      return "needs-acknowledgement";
    }
  }

  /**
   * All is stored.
   *
   * @param compared how its studies stood beside the base before
   * @param proposals what was read from words of papers, by kind, for a person to confirm
   */
  record Done(ImportRecord record, Compared compared, List<NotedKind> proposals)
      implements ImportState {
    public Done {
      Objects.requireNonNull(compared, "compared");
      proposals = List.copyOf(proposals);
    }

    @Override
    public String code() {
      return "done";
    }
  }

  /**
   * It broke off through no fault of the person.
   *
   * @param message what was stored, nearly always nothing, and what to do
   */
  record Failed(String message) implements ImportState {
    @Override
    public String code() {
      return "failed";
    }
  }
}
