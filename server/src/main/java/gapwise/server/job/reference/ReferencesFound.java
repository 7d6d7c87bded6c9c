package gapwise.server.job.reference;

import gapwise.problem.Problem;
import gapwise.reference.format.FileAnswer;
import gapwise.reference.pair.Standing;
import gapwise.reference.pair.Verdict;
import java.util.List;
import java.util.Optional;

/**
 * What was found in files of references: all of its counts, and the first of each list, so that
 * many loads can be kept. The table of proposals has all of it.
 *
 * @param files what became of each file
 * @param studies how many studies of the evidence base were compared too
 * @param log the log of searches, where one was handed in
 * @param kinds what is wrong or doubtful in records, refusals first
 * @param standings what became of papers, by kind
 * @param pairs proposed pairs, the surest verdict first
 */
public record ReferencesFound(
    List<FileAnswer> files,
    int studies,
    Optional<LogHeld> log,
    List<ProblemKind> kinds,
    List<StandingKind> standings,
    List<PairKind> pairs) {
  /** Most that is shown of one list; nobody reads on, and the table has the rest. */
  public static final int MOST_SHOWN = 200;

  public ReferencesFound {
    files = List.copyOf(files);
    kinds = List.copyOf(kinds);
    standings = List.copyOf(standings);
    pairs = List.copyOf(pairs);
  }

  /** Records that were read from all files. */
  public int read() {
    return files.stream().mapToInt(FileAnswer::read).sum();
  }

  /** Pairs of all verdicts. */
  public int allPairs() {
    return pairs.stream().mapToInt(PairKind::count).sum();
  }

  /**
   * The log held against the files.
   *
   * @param searches how many searches it tells of
   * @param told what does not agree; empty when all does
   * @param problems why the log could not be read; empty when it could
   */
  public record LogHeld(int searches, List<String> told, List<Problem> problems) {
    public LogHeld {
      told = List.copyOf(told);
      problems = List.copyOf(problems);
    }
  }

  /**
   * Problems of one kind.
   *
   * @param sentence what the kind is
   * @param refused whether the records stay out
   * @param count how many there are
   * @param first the first of them
   */
  public record ProblemKind(String sentence, boolean refused, int count, List<Noted> first) {
    public ProblemKind {
      first = List.copyOf(first);
    }
  }

  /** A problem with the file that its record stands in. */
  public record Noted(String file, Problem problem) {}

  /** Papers of which the same is told: how many there are, and the first of them. */
  public record StandingKind(Standing.Kind kind, int count, List<Told> first) {
    public StandingKind {
      first = List.copyOf(first);
    }
  }

  /** What is told of one paper: its record, its line and the sentence. */
  public record Told(Side paper, String sentence) {}

  /** Pairs of one verdict: how many there are, and the first of them. */
  public record PairKind(Verdict verdict, int count, List<Pair> first) {
    public PairKind {
      first = List.copyOf(first);
    }
  }

  /** Two records and the reasons. */
  public record Pair(Side one, Side other, List<String> reasons) {
    public Pair {
      reasons = List.copyOf(reasons);
    }
  }

  /**
   * One record.
   *
   * @param label by which the table and the files name it
   * @param line the reference as a line
   * @param study its study, where it stands in the evidence base
   */
  public record Side(String label, String line, Optional<String> study) {}
}
