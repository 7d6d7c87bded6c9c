package gapwise.server.address;

import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Nearest;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.search.SearchRequest;
import gapwise.selection.Conversions;
import gapwise.selection.CountedAs;
import gapwise.selection.DefinitionAsked;
import gapwise.selection.Question;
import gapwise.selection.Question.SuspectedOverlap;
import gapwise.selection.UnstatedClock;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Reads a question to the evidence, for pages, plots and the API, from an address: {@code outcome},
 * {@code clock}, {@code unstated-clock} (keep, leave-out), {@code least} (patients of a series),
 * {@code definition}, {@code conversions}, {@code counted}, {@code suspected-overlap} (keep,
 * leave-out), {@code status} (draft, extracted, verified, agreed), {@code split} (a detail of the
 * method), and the filters.
 */
public final class QuestionAddress {
  /** The name of a definition. */
  public static final String DEFINITION = "definition";

  /** The name of whether numbers are worked out that are not printed. */
  public static final String CONVERSIONS = "conversions";

  /** The name of the form in which what a patient can have several of is counted. */
  public static final String COUNTED = "counted";

  /** The name of the rule for values that do not say from when they count. */
  public static final String UNSTATED_CLOCK = "unstated-clock";

  /** The name of the detail of the method by which a pooled result is split. */
  public static final String SPLIT = "split";

  /** The name of the rule for studies that may share patients. */
  public static final String OVERLAP = "suspected-overlap";

  /** The name of how far the extraction of a study must have come at least. */
  public static final String STATUS = "status";

  /** Names that belong to a question and to no list of groups. */
  public static final List<String> OWN_NAMES =
      List.of(
          "clock",
          "least",
          DEFINITION,
          UNSTATED_CLOCK,
          CONVERSIONS,
          COUNTED,
          OVERLAP,
          STATUS,
          SPLIT);

  private QuestionAddress() {}

  /**
   * The question that an address asks; empty where it names no outcome.
   *
   * @throws WrongInputException with everything that is wrong in it
   */
  public static Optional<Question> question(Address address) {
    SearchRequest among = Filters.read(address).withOutcomes(Set.of());
    Optional<Clock> clock = word(address, "clock", Clock.class);
    int minimum = minimumPatients(address);
    Optional<UnstatedClock> unstated = word(address, UNSTATED_CLOCK, UnstatedClock.class);
    Optional<DefinitionAsked> definition = definition(address);
    Conversions conversions = word(address, CONVERSIONS, Conversions.class).orElse(Conversions.ALL);
    Optional<CountedAs> counted = word(address, COUNTED, CountedAs.class);
    SuspectedOverlap overlap =
        word(address, OVERLAP, SuspectedOverlap.class).orElse(SuspectedOverlap.KEEP);
    Optional<ExtractionStatus> status = status(address);
    return Filters.outcome(address)
        .map(
            asked ->
                new Question(asked, among, clock, minimum)
                    .withUnstatedClock(unstated)
                    .withDefinition(definition)
                    .withConversions(conversions)
                    .withCountedAs(counted)
                    .withSuspectedOverlap(overlap)
                    .withLeastStatus(status));
  }

  /**
   * How far the extraction of a study must have come at least; empty for any.
   *
   * @throws WrongInputException where it is no such word
   */
  public static Optional<ExtractionStatus> status(Address address) {
    return word(address, STATUS, ExtractionStatus.class);
  }

  /**
   * The detail of the method by which the pooled result is split; empty where it is by method.
   *
   * @throws WrongInputException where it is none that has listed words
   */
  public static Optional<DetailKind> split(Address address) {
    String code = address.first(SPLIT);
    List<DetailKind> kinds =
        DetailKind.ofMethods().all().stream().filter(kind -> !kind.values().isEmpty()).toList();
    Optional<DetailKind> found =
        kinds.stream().filter(kind -> kind.code().equals(code)).findFirst();
    if (!code.isEmpty() && found.isEmpty()) {
      throw wrong(SPLIT, code, Nearest.expected(code, kinds.stream().map(Coded::code).toList()));
    }
    return found;
  }

  private static <E extends Enum<E> & Coded> Optional<E> word(
      Address address, String name, Class<E> vocabulary) {
    String code = address.first(name);
    Optional<E> found = Coded.parse(vocabulary, code);
    if (!code.isEmpty() && found.isEmpty()) {
      throw wrong(name, code, Nearest.expected(code, Coded.codes(vocabulary)));
    }
    return found;
  }

  private static int minimumPatients(Address address) {
    String least = address.first("least");
    if (least.isEmpty()) {
      return Question.USUAL_MINIMUM_PATIENTS;
    }
    if (!least.matches("[1-9]\\d{0,4}")) {
      throw wrong("least", least, "expected a number of patients such as 5");
    }
    return Integer.parseInt(least);
  }

  private static Optional<DefinitionAsked> definition(Address address) {
    List<String> asked = address.all(DEFINITION);
    if (asked.size() > 1) {
      throw wrong(DEFINITION, String.join("', '", asked), "expected one definition at a time");
    }
    Optional<DefinitionAsked> definition =
        asked.stream().findFirst().flatMap(DefinitionAsked::find);
    if (definition.isEmpty() && !address.first(DEFINITION).isEmpty()) {
      String found = address.first(DEFINITION);
      throw wrong(DEFINITION, found, Nearest.expected(found, DefinitionAsked.codes()));
    }
    return definition;
  }

  private static WrongInputException wrong(String name, String found, String expected) {
    return new WrongInputException(
        List.of(new Problem(name, "unknown-code", "'" + found + "'; " + expected)));
  }
}
