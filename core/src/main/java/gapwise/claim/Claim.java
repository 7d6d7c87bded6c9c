package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.QuestionWords;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchRequest;
import gapwise.selection.DefinitionAsked;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import gapwise.selection.UnstatedClock;
import java.util.Locale;
import java.util.Map;
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
 * @param definition how the outcome must be defined; empty takes every definition
 * @param unstatedClock what becomes of series that do not say where their times start, as for a
 *     {@link Question}
 * @param minimumPatients least number of patients or limbs of a series
 * @param leastStatus how far the extraction of a study must have come at least, as for a {@link
 *     Question}
 */
public record Claim(
    Side a,
    Direction direction,
    Side b,
    SearchRequest among,
    Optional<DefinitionAsked> definition,
    Optional<UnstatedClock> unstatedClock,
    int minimumPatients,
    Optional<ExtractionStatus> leastStatus) {

  /** A claim about studies of any status. */
  public Claim(
      Side a,
      Direction direction,
      Side b,
      SearchRequest among,
      Optional<DefinitionAsked> definition,
      Optional<UnstatedClock> unstatedClock,
      int minimumPatients) {
    this(a, direction, b, among, definition, unstatedClock, minimumPatients, Optional.empty());
  }

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
    Objects.requireNonNull(unstatedClock, "unstatedClock");
    Objects.requireNonNull(leastStatus, "leastStatus");
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

  /**
   * The question of every method, through which both may be compared.
   *
   * @param rows those of both methods; the same values are taken of them
   */
  public Question every(Selection rows) {
    return rows.fixed(question(a, Set.of()));
  }

  private Question question(Side side, Set<String> methods) {
    return new Question(
        side.outcome(),
        among.withMethods(methods),
        side.clock(),
        unstatedClock,
        minimumPatients,
        leastStatus,
        definition);
  }

  /** What the claim says, as a sentence without its full stop. */
  public String words() {
    return narrowed()
        .map(among -> say("claim.among", Map.of("claim", comparison(), "among", among)))
        .orElseGet(this::comparison);
  }

  private String comparison() {
    Outcome outcome = outcome();
    boolean more = direction == Direction.MORE;
    return switch (outcome.kind()) {
      case EVENT ->
          say(
              more ? "claim.more-events" : "claim.fewer-events",
              Map.of(
                  "first",
                  a.method().shortLabel(),
                  "second",
                  b.name(),
                  "happened",
                  outcome.happened().orElse(outcome.label())));
      case CATEGORIES ->
          said(more ? "claim.more-good-results" : "claim.fewer-good-results", outcome.label());
      case COUNT -> said(more ? "claim.more-counted" : "claim.fewer-counted", outcome.label());
      case TIME -> said(more ? "claim.longer" : "claim.shorter", lower(outcome));
      case PHASE -> said(more ? "claim.longer-phase" : "claim.shorter-phase", outcome.label());
      case QUANTITY, SCORE, COST -> said(more ? "claim.higher" : "claim.lower", outcome.label());
    };
  }

  private String said(String sentence, String outcome) {
    return say(
        sentence, Map.of("first", a.method().shortLabel(), "second", b.name(), "outcome", outcome));
  }

  /** The outcome as it stands within a sentence. */
  private static String lower(Outcome outcome) {
    return outcome.label().substring(0, 1).toLowerCase(Locale.ROOT) + outcome.label().substring(1);
  }

  /** The outcome, and among whom, as it stands within a sentence. */
  String outcomeAmong() {
    String label = outcome().label();
    return narrowed()
        .map(among -> say("claim.outcome-among", Map.of("outcome", label, "among", among)))
        .orElseGet(() -> say("claim.outcome", Map.of("outcome", label)));
  }

  /** Among whom; empty where nothing narrows. */
  private Optional<String> narrowed() {
    return QuestionWords.among(
        new Question(outcome(), among, Optional.empty(), minimumPatients, leastStatus));
  }
}
