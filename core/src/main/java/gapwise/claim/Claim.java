package gapwise.claim;

import gapwise.answer.QuestionWords;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * "Method A gives more of an outcome than method B", as somebody claims it.
 *
 * @param a the method that the claim is about
 * @param direction more or less
 * @param b the method it is set against; with its own outcome and clock, which a claim that can be
 *     examined has in common with the first
 * @param among which arms; methods that it names are dropped
 * @param definition the outcome in a paper's own words; empty takes every definition
 * @param minimumPatients least number of patients or limbs of a series
 */
public record Claim(
    Side a,
    Direction direction,
    Side b,
    SearchRequest among,
    Optional<String> definition,
    int minimumPatients) {

  /** One side of a claim. */
  public record Side(Method method, Outcome outcome, Optional<Clock> clock) {
    public Side {
      Objects.requireNonNull(method, "method");
      Objects.requireNonNull(outcome, "outcome");
      Objects.requireNonNull(clock, "clock");
    }

    /** The method as it stands within a sentence. */
    public String name() {
      return nameOf(method);
    }
  }

  public Claim {
    Objects.requireNonNull(a, "a");
    Objects.requireNonNull(direction, "direction");
    Objects.requireNonNull(b, "b");
    among = among.withMethods(Set.of()).withOutcomes(Set.of());
    Objects.requireNonNull(definition, "definition");
  }

  static String nameOf(Method method) {
    return method.shortLabel().toLowerCase(Locale.ROOT);
  }

  /** The outcome of the first side. */
  public Outcome outcome() {
    return a.outcome();
  }

  /** The question of one side alone, on its own clock. */
  Question alone(Side side) {
    return question(side, Set.of(side.method().code()));
  }

  /** The question of both methods together. */
  Question both(Optional<Clock> clock) {
    return question(a, Set.of(a.method().code(), b.method().code())).withClock(clock);
  }

  /** The question of every method, through which both may be compared. */
  Question every(Optional<Clock> clock) {
    return question(a, Set.of()).withClock(clock);
  }

  private Question question(Side side, Set<String> methods) {
    return new Question(
        side.outcome(),
        among.withMethods(methods),
        side.clock(),
        minimumPatients,
        Optional.empty(),
        definition);
  }

  /** What the claim says, as a sentence without its full stop. */
  public String words() {
    Outcome outcome = outcome();
    String word = direction.word(outcome);
    String first = a.method().shortLabel();
    String claimed =
        switch (outcome.kind()) {
          case EVENT -> " gives " + word + " " + outcome.happened().orElse(outcome.label());
          case CATEGORIES ->
              " gives " + word + " good or excellent results (" + outcome.label() + ")";
          case COUNT -> " gives " + word + " of “" + outcome.label() + "”";
          default -> " gives a " + word + " value of “" + outcome.label() + "”";
        };
    if (outcome.kind() == Outcome.Kind.TIME) {
      claimed = " gives a " + word + " " + lower(outcome);
    }
    return first + claimed + " than " + b.name() + scope();
  }

  /** The outcome as it stands within a sentence. */
  static String lower(Outcome outcome) {
    return outcome.label().substring(0, 1).toLowerCase(Locale.ROOT) + outcome.label().substring(1);
  }

  /** Among whom, after a colon; empty where nothing narrows. */
  String scope() {
    List<String> parts =
        List.of(
            QuestionWords.of(new Question(outcome(), among, Optional.empty(), minimumPatients)));
    String narrowed = parts.get(0).substring(outcome().label().length());
    return narrowed.isEmpty() ? "" : " (" + narrowed.replaceFirst("^[:, ]+", "") + ")";
  }
}
