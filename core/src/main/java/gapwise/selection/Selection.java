package gapwise.selection;

import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.problem.Problem;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The rows that answer a question.
 *
 * @param question what was asked
 * @param rows one for each arm that enters, in order of study and arm
 * @param leftOut what could have entered and did not, with the reason, in the same order
 * @param notes what a reader of the rows must know, such as limbs and patients counted side by side
 * @param clock where the times of the rows start; empty where that does not matter or no row says
 * @param clocks the origins of time that usable reports have, taken or not, most arms first
 * @param dataSha256 SHA-256 in lower-case hexadecimal over the records that were read, in order:
 *     the same records give the same value in any copy of the evidence base
 * @param change number of the last change of the evidence base that was surely read
 */
public record Selection(
    Question question,
    List<SelectedRow> rows,
    List<LeftOut> leftOut,
    List<Problem> notes,
    Optional<Clock> clock,
    List<Present> clocks,
    String dataSha256,
    long change) {
  public Selection {
    Objects.requireNonNull(question, "question");
    rows = List.copyOf(rows);
    leftOut = List.copyOf(leftOut);
    notes = List.copyOf(notes);
    Objects.requireNonNull(clock, "clock");
    clocks = List.copyOf(clocks);
    Objects.requireNonNull(dataSha256, "dataSha256");
  }

  /**
   * Something that a page can offer to choose, with the number of arms that have it.
   *
   * @param code code of a clock, or the words of a definition
   * @param label for people
   * @param arms number of arms
   */
  public record Present(String code, String label, int arms) {

    static List<Present> mostFirst(Map<String, Integer> counts) {
      return counts.entrySet().stream()
          .map(entry -> new Present(entry.getKey(), entry.getKey(), entry.getValue()))
          .sorted(Comparator.comparingInt(Present::arms).reversed())
          .toList();
    }

    static Present of(Coded coded, int arms) {
      return new Present(coded.code(), coded.label(), arms);
    }
  }

  /** The definitions that the rows state for the outcome, in their words, most rows first. */
  public List<Present> definitions() {
    return definitions(question, rows);
  }

  static List<Present> definitions(Question question, List<SelectedRow> rows) {
    Map<String, Integer> counts = new TreeMap<>();
    for (SelectedRow row : rows) {
      row.definition(question.outcome()).ifPresent(words -> counts.merge(words, 1, Integer::sum));
    }
    return Present.mostFirst(counts);
  }

  /** The form in which a count for each patient stands in the rows; empty for other outcomes. */
  public Optional<CountedAs> countedAs() {
    return question.outcome().kind() == Outcome.Kind.COUNT
        ? rows.stream().findFirst().flatMap(row -> CountedAs.of(row.value()))
        : Optional.empty();
  }

  /**
   * The question with the form of counting that the rows are in, so that it is asked alike again.
   */
  public Question settled() {
    return question.withCountedAs(countedAs());
  }

  /** Rows whose mean or median missing length lies in the range asked for; 0 when none was. */
  public int rowsWithCentreInside() {
    return question
        .among()
        .defect()
        .map(
            range ->
                (int)
                    rows.stream()
                        .filter(row -> row.defect().filter(d -> d.centreLiesIn(range)).isPresent())
                        .count())
        .orElse(0);
  }

  /** Rows that reach into the range asked for with their spread alone; 0 when none was asked. */
  public int rowsOnlyOverlapping() {
    return question.among().defect().isPresent() ? rows.size() - rowsWithCentreInside() : 0;
  }
}
