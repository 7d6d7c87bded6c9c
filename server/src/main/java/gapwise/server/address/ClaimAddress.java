package gapwise.server.address;

import gapwise.claim.Claim;
import gapwise.claim.Direction;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Nearest;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.selection.DefinitionAsked;
import gapwise.selection.Question;
import gapwise.selection.UnstatedClock;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * Reads a claim, for its page and the API, from an address: {@code a}, {@code says} (more, less),
 * {@code outcome}, {@code b}; {@code outcome-b}, {@code clock}, {@code clock-b}, {@code
 * definition}, {@code unstated-clock}, {@code least}, {@code differ}, {@code status}, and the
 * filters.
 */
public final class ClaimAddress {
  /** Path of the files of a claim's figure. */
  public static final String FIGURE = "/api/v1/claim-figure";

  /** All that is said of a claim, with its plans, as JSON. */
  public static final String FOR_PROGRAMS = "/api/v1/claim";

  /** Names that only this page reads. */
  public static final List<String> OWN =
      List.of(
          "a",
          "says",
          "b",
          "outcome-b",
          "clock",
          "clock-b",
          "unstated-clock",
          "definition",
          "differ",
          "ways");

  private final Address address;
  private final Problems problems = new Problems();

  private ClaimAddress(Address address) {
    this.address = address;
  }

  /**
   * The claim; empty where a part has still to be chosen.
   *
   * @throws WrongInputException with everything that is wrong in the address
   */
  public static Optional<Claim> claim(Address address) {
    return new ClaimAddress(address).read();
  }

  /**
   * The difference that would matter; empty where none is named.
   *
   * @throws WrongInputException if it is no number from 0 to 99
   */
  public static OptionalDouble difference(Address address) {
    String text = address.first("differ");
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (text.matches("\\d{1,2}([.,]\\d{1,2})?")) {
      return OptionalDouble.of(Double.parseDouble(text.replace(',', '.')));
    }
    Problems problems = new Problems();
    problems.add(
        "differ", "not-a-number", "'" + text + "'; expected a number below 100 such as 10");
    throw new WrongInputException(problems.list());
  }

  private Optional<Claim> read() {
    Optional<Method> a = word("a", Method.vocabulary()::find, Method.vocabulary().codes());
    Optional<Method> b = word("b", Method.vocabulary()::find, Method.vocabulary().codes());
    Optional<Direction> says = word("says", Direction::of, List.of("more", "less"));
    Optional<Outcome> outcome = outcome("outcome");
    Optional<Outcome> ofB = outcome("outcome-b").or(() -> outcome);
    Optional<Clock> clock = clock("clock");
    Optional<Clock> clockOfB = clock("clock-b").or(() -> clock);
    int least = least();
    Optional<DefinitionAsked> definition =
        word("definition", DefinitionAsked::find, DefinitionAsked.codes());
    Optional<UnstatedClock> unstated =
        word(
            QuestionAddress.UNSTATED_CLOCK,
            code -> Coded.parse(UnstatedClock.class, code),
            Coded.codes(UnstatedClock.class));
    Optional<ExtractionStatus> status =
        word(
            QuestionAddress.STATUS,
            code -> Coded.parse(ExtractionStatus.class, code),
            Coded.codes(ExtractionStatus.class));
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    if (a.isEmpty() || b.isEmpty() || outcome.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Claim(
            new Claim.Side(a.get(), outcome.get(), clock),
            says.orElse(Direction.MORE),
            new Claim.Side(b.get(), ofB.orElseThrow(), clockOfB),
            Filters.read(address.without(List.of("method"))),
            definition,
            unstated,
            least,
            status));
  }

  private Optional<Outcome> outcome(String name) {
    return word(name, Outcome.vocabulary()::find, Outcome.vocabulary().codes());
  }

  private Optional<Clock> clock(String name) {
    return word(name, code -> Coded.parse(Clock.class, code), Coded.codes(Clock.class));
  }

  private int least() {
    String text = address.first("least");
    if (text.isEmpty()) {
      return Question.USUAL_MINIMUM_PATIENTS;
    }
    if (text.matches("[1-9]\\d{0,4}")) {
      return Integer.parseInt(text);
    }
    problems.add(
        "least", "not-a-number", "'" + text + "'; expected a number of patients such as 5");
    return Question.USUAL_MINIMUM_PATIENTS;
  }

  private <T> Optional<T> word(
      String name, Function<String, Optional<T>> find, List<String> known) {
    String code = address.first(name);
    if (code.isEmpty()) {
      return Optional.empty();
    }
    Optional<T> found = find.apply(code);
    if (found.isEmpty()) {
      problems.add(
          name, "unknown-code", "'" + code + "' is unknown; " + Nearest.expected(code, known));
    }
    return found;
  }
}
