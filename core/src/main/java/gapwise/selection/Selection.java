package gapwise.selection;

import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * The rows that answer a question.
 *
 * @param question what was asked
 * @param rows one for each arm that enters, in order of study and arm
 * @param leftOut what could have entered and did not, with the reason, in the same order
 * @param notes what a reader of the rows must know, such as limbs and patients counted side by side
 * @param clock where the times of the rows start; empty where that does not matter or no row says
 * @param silentStay whether values that do not say where their times start are among the rows
 * @param clocks the origins of time that usable reports have, taken or not, most arms first
 * @param dataSha256 SHA-256 in lower-case hexadecimal over what persons settled of shared patients,
 *     and the records that were read, in order: the same records give the same value in any copy of
 *     the evidence base
 * @param change number of the last change of the evidence base that was surely read
 */
public record Selection(
    Question question,
    List<SelectedRow> rows,
    List<LeftOut> leftOut,
    List<Problem> notes,
    Optional<Clock> clock,
    boolean silentStay,
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
   * @param code code of a clock, or of what can be asked of a definition
   * @param label for people
   * @param arms number of arms
   */
  public record Present(String code, String label, int arms) {

    static Present of(Coded coded, int arms) {
      return new Present(coded.code(), coded.label(), arms);
    }
  }

  /**
   * How the rows define the outcome, by what can be asked for: kinds with the most rows first, then
   * words of no known kind, then silence. A row whose paper asks for several things counts in each.
   */
  public List<Present> definitions() {
    return definitions(question, rows);
  }

  static List<Present> definitions(Question question, List<SelectedRow> rows) {
    List<Present> kinds = new ArrayList<>();
    List<Present> unsorted = new ArrayList<>();
    for (DefinitionAsked asked : DefinitionAsked.all()) {
      int fitting = (int) rows.stream().filter(row -> asked.fits(row.definition())).count();
      if (fitting > 0) {
        (asked instanceof DefinitionAsked.OfKind ? kinds : unsorted)
            .add(Present.of(asked, fitting));
      }
    }
    kinds.sort(Comparator.comparingInt(Present::arms).reversed());
    kinds.addAll(unsorted);
    return List.copyOf(kinds);
  }

  /**
   * A question on the clock of these rows, and with values that state none taken where these rows
   * take them, whatever most of its own arms state: so that parts of a whole are asked alike.
   */
  public Question fixed(Question other) {
    return other
        .withClock(clock)
        .withCountedAs(countedAs())
        .withUnstatedClock(
            question
                .unstatedClock()
                .or(
                    () ->
                        clock.map(
                            taken -> silentStay ? UnstatedClock.KEEP : UnstatedClock.LEAVE_OUT)));
  }

  /** The same without values of several methods together, which are none of any method. */
  public Selection byMethod() {
    if (rows.stream().noneMatch(SelectedRow::isOfSeveralMethods)) {
      return this;
    }
    List<LeftOut> further = new ArrayList<>(leftOut);
    for (SelectedRow row : rows) {
      if (row.isOfSeveralMethods()) {
        further.add(
            new LeftOut(
                row.study().id(),
                row.arm().id(),
                row.label(),
                new Reason.ValueOfAllArms(row.study().arms().size())));
      }
    }
    return new Selection(
        question,
        rows.stream().filter(row -> !row.isOfSeveralMethods()).toList(),
        further,
        notes,
        clock,
        silentStay,
        clocks,
        dataSha256,
        change);
  }

  /**
   * The rows of one method, asked for on the clock and in the form that all rows are in: what the
   * question about that method alone would answer.
   */
  public Selection of(Method method) {
    return new Selection(
        fixed(question).withAmong(question.among().withMethods(Set.of(method.code()))),
        rows.stream().filter(row -> row.arm().method().principal().equals(method)).toList(),
        List.of(),
        notes,
        clock,
        silentStay,
        clocks,
        dataSha256,
        change);
  }

  /** Whether all rows define the outcome by the same things, or none of them says how. */
  public boolean alikeDefined() {
    return alikeDefined(question, rows);
  }

  static boolean alikeDefined(Question question, List<SelectedRow> rows) {
    return rows.stream()
            .map(row -> row.definition())
            .map(one -> one.kinds().isEmpty() ? one.words() : Set.copyOf(one.kinds()))
            .distinct()
            .count()
        < 2;
  }

  /** Rows that do not say from when they count; 0 for outcomes of which that does not matter. */
  public int rowsWithoutClock() {
    return Clocks.silent(question, rows);
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
