package gapwise.server.job;

import gapwise.curation.ImportRecord;
import gapwise.exchange.Warning;
import gapwise.intake.NotedKind;
import gapwise.problem.Problem;
import java.util.List;

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

  /** Something is doubtful and waits for a person; nothing was stored yet. */
  record Doubtful(int studies, List<Warning> open) implements ImportState {
    public Doubtful {
      open = List.copyOf(open);
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
   * @param studies ids of the studies of the import, in its order
   * @param proposals what was read from words of papers, by kind, for a person to confirm
   */
  record Done(ImportRecord record, List<String> studies, List<NotedKind> proposals)
      implements ImportState {
    public Done {
      studies = List.copyOf(studies);
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
