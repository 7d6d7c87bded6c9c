package gapwise.server.address;

import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Coded;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Reads a question to the evidence, for pages, plots and the API, from an address: {@code outcome},
 * {@code clock}, {@code least} (patients of a series), {@code definition}, and the filters.
 */
public final class QuestionAddress {
  /** The name of a definition. */
  public static final String DEFINITION = "definition";

  private QuestionAddress() {}

  /**
   * The question that an address asks; empty where it names no outcome.
   *
   * @throws WrongInputException with everything that is wrong in it
   */
  public static Optional<Question> question(Address address) {
    SearchRequest among = Filters.read(address).withOutcomes(Set.of());
    Optional<Clock> clock = clock(address);
    int minimum = minimumPatients(address);
    Optional<String> definition = definition(address);
    return Filters.outcome(address)
        .map(asked -> new Question(asked, among, clock, minimum).withDefinition(definition));
  }

  private static Optional<Clock> clock(Address address) {
    String code = address.first("clock");
    Optional<Clock> clock = Coded.parse(Clock.class, code);
    if (!code.isEmpty() && clock.isEmpty()) {
      throw wrong("clock", code, Coded.codes(Clock.class));
    }
    return clock;
  }

  private static int minimumPatients(Address address) {
    String least = address.first("least");
    if (least.isEmpty()) {
      return Question.USUAL_MINIMUM_PATIENTS;
    }
    if (!least.matches("[1-9]\\d{0,4}")) {
      throw wrong("least", least, "a number of patients such as 5");
    }
    return Integer.parseInt(least);
  }

  private static Optional<String> definition(Address address) {
    List<String> asked = address.all(DEFINITION);
    if (asked.size() > 1) {
      throw wrong(DEFINITION, String.join("', '", asked), "one definition at a time");
    }
    return asked.stream().findFirst();
  }

  private static WrongInputException wrong(String name, String found, String expected) {
    return new WrongInputException(
        List.of(new Problem(name, "unknown-code", "'" + found + "'; expected " + expected)));
  }
}
