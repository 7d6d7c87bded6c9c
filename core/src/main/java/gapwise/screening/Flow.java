package gapwise.screening;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * The flow of records through a review, in the boxes of the PRISMA 2020 statement (Page and others,
 * BMJ 2021;372:n71, figure 1). Every count is one of the board, and they always add up: the
 * constructor checks it. What is not decided yet stands in boxes of its own.
 *
 * @param identified records by database, register or file
 * @param duplicates records of papers that others stand for
 * @param screened papers read by title and abstract, decided or not
 * @param leftOutByTitle of these
 * @param waitingAtTitle of these, not decided yet
 * @param sought full texts that were sought
 * @param notHad of these
 * @param waitingFullText of these, not decided yet
 * @param leftOut full texts left out, by reason
 * @param included full texts that are taken
 * @param studies studies of the evidence base that these tell of
 * @param withoutStudy included full texts that no study of the base tells of yet
 */
public record Flow(
    Map<String, Integer> identified,
    int duplicates,
    int screened,
    int leftOutByTitle,
    int waitingAtTitle,
    int sought,
    int notHad,
    int waitingFullText,
    Map<String, Integer> leftOut,
    int included,
    int studies,
    int withoutStudy) {
  public Flow {
    identified = Collections.unmodifiableMap(new LinkedHashMap<>(identified));
    leftOut = Collections.unmodifiableMap(new LinkedHashMap<>(leftOut));
    same(sum(identified), duplicates + screened, "records identified");
    same(screened, leftOutByTitle + waitingAtTitle + sought, "papers screened");
    same(sought, notHad + waitingFullText + sum(leftOut) + included, "full texts sought");
    if (duplicates < 0 || withoutStudy < 0 || withoutStudy > included || studies < 0) {
      throw new IllegalArgumentException("a count is below 0 or above its whole");
    }
  }

  private static int sum(Map<String, Integer> counts) {
    return counts.values().stream().mapToInt(Integer::intValue).sum();
  }

  private static void same(int whole, int parts, String what) {
    if (whole != parts) {
      throw new IllegalArgumentException(what + ": " + whole + " are not " + parts);
    }
  }

  /** Records in all. */
  public int records() {
    return sum(identified);
  }

  /** Full texts that were read and decided. */
  public int assessed() {
    return sum(leftOut) + included;
  }

  /** Full texts left out. */
  public int leftOutInFull() {
    return sum(leftOut);
  }

  /** Whether everything is decided. */
  public boolean isDone() {
    return waitingAtTitle == 0 && waitingFullText == 0;
  }

  /** Which studies of the evidence base tell of a paper. */
  public interface StudiesOf {
    /** Ids of the studies of the paper that a reference leads. */
    List<String> of(String reference);
  }

  /**
   * The flow of a board.
   *
   * @param identified records by where they were found, duplicates among them
   * @param reasons the order of the reasons; others follow by name
   */
  public static Flow of(
      Board board, Map<String, Integer> identified, List<String> reasons, StudiesOf studies) {
    int[] title = counted(board, Stage.TITLE);
    int[] full = counted(board, Stage.FULL_TEXT);
    Set<String> told = new TreeSet<>();
    int without = 0;
    Map<String, Integer> leftOut = new LinkedHashMap<>();
    reasons.forEach(reason -> leftOut.put(reason, 0));
    List<String> others = new ArrayList<>();
    for (String paper : board.papers(Stage.FULL_TEXT)) {
      if (board.standing(Stage.FULL_TEXT, paper) instanceof Standing.Decided decided) {
        if (decided.choice().keeps()) {
          List<String> of = studies.of(paper);
          told.addAll(of);
          without += of.isEmpty() ? 1 : 0;
        } else {
          decided.reason().ifPresent(others::add);
        }
      }
    }
    Collections.sort(others);
    others.forEach(reason -> leftOut.merge(reason, 1, Integer::sum));
    leftOut.values().removeIf(count -> count == 0);
    int screened = board.papers(Stage.TITLE).size();
    return new Flow(
        identified,
        sum(identified) - screened,
        screened,
        title[Choice.EXCLUDE.ordinal()],
        title[WAITING],
        board.papers(Stage.FULL_TEXT).size(),
        full[Choice.NOT_HAD.ordinal()],
        full[WAITING],
        leftOut,
        full[Choice.KEEP.ordinal()],
        told.size(),
        without);
  }

  private static final int WAITING = Choice.values().length;

  /** Papers by what was decided, those not decided last. */
  private static int[] counted(Board board, Stage stage) {
    int[] counts = new int[WAITING + 1];
    for (String paper : board.papers(stage)) {
      counts[
          board.standing(stage, paper) instanceof Standing.Decided decided
              ? decided.choice().ordinal()
              : WAITING]++;
    }
    return counts;
  }
}
