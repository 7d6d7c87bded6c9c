package gapwise.selection;

import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchRequest;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * What is asked of the evidence base: one outcome, among the arms that a search finds.
 *
 * @param outcome the outcome; every definition is asked for apart
 * @param among which arms; outcomes that it asks for are dropped, since only those arms enter that
 *     report the outcome of the question
 * @param clock where times start; empty takes the origin that most arms state and leaves out those
 *     that state another, since times on different clocks are never pooled
 * @param unstatedClock what becomes of values that do not say where they start; empty takes them
 *     with the origin that most arms state, and with no other
 * @param minimumPatients least number of patients or limbs a row must speak of, at least 1; 5 is
 *     common practice (no source) and keeps single cases out of pooled series
 * @param leastStatus how far the extraction of a study must have come at least; empty takes drafts
 *     too
 * @param definition how the outcome must be defined; empty takes every definition
 * @param conversions whether means and standard deviations that are not printed are worked out
 * @param countedAs of what one patient can have several, the form to take; empty takes the one in
 *     which more series can be pooled
 * @param suspectedOverlap what becomes of studies that may share patients
 */
public record Question(
    Outcome outcome,
    SearchRequest among,
    Optional<Clock> clock,
    Optional<UnstatedClock> unstatedClock,
    int minimumPatients,
    Optional<ExtractionStatus> leastStatus,
    Optional<DefinitionAsked> definition,
    Conversions conversions,
    Optional<CountedAs> countedAs,
    SuspectedOverlap suspectedOverlap) {

  /** What becomes of studies that a record suspects of telling of the same patients. */
  public enum SuspectedOverlap implements Coded {
    /** All are pooled, with a caution that counts them. */
    KEEP("pooled all the same"),
    /** Of each such group of studies one stays, as of studies that are known to share patients. */
    LEAVE_OUT("one of each such group");

    private final String label;

    SuspectedOverlap(String label) {
      this.label = label;
    }

    @Override
    public String code() {
      return Coded.codeOf(this);
    }

    @Override
    public String label() {
      return label;
    }
  }

  /** The least number of patients unless a person says otherwise (common practice, no source). */
  public static final int USUAL_MINIMUM_PATIENTS = 5;

  public Question {
    Objects.requireNonNull(outcome, "outcome");
    among = among.withOutcomes(Set.of());
    Objects.requireNonNull(clock, "clock");
    Objects.requireNonNull(unstatedClock, "unstatedClock");
    Objects.requireNonNull(leastStatus, "leastStatus");
    Objects.requireNonNull(definition, "definition");
    Objects.requireNonNull(conversions, "conversions");
    Objects.requireNonNull(countedAs, "countedAs");
    Objects.requireNonNull(suspectedOverlap, "suspectedOverlap");
    if (minimumPatients < 1) {
      throw new IllegalArgumentException(
          "minimum of patients must be at least 1, was " + minimumPatients);
    }
  }

  /** A question whose numbers are worked out where they can be. */
  public Question(
      Outcome outcome,
      SearchRequest among,
      Optional<Clock> clock,
      Optional<UnstatedClock> unstatedClock,
      int minimumPatients,
      Optional<ExtractionStatus> leastStatus,
      Optional<DefinitionAsked> definition) {
    this(
        outcome,
        among,
        clock,
        unstatedClock,
        minimumPatients,
        leastStatus,
        definition,
        Conversions.ALL,
        Optional.empty(),
        SuspectedOverlap.KEEP);
  }

  /** A question to studies of any definition. */
  public Question(
      Outcome outcome,
      SearchRequest among,
      Optional<Clock> clock,
      int minimumPatients,
      Optional<ExtractionStatus> leastStatus) {
    this(outcome, among, clock, Optional.empty(), minimumPatients, leastStatus, Optional.empty());
  }

  /** A question to studies of any status. */
  public Question(
      Outcome outcome, SearchRequest among, Optional<Clock> clock, int minimumPatients) {
    this(outcome, among, clock, minimumPatients, Optional.empty());
  }

  /** The same question about another outcome. */
  Question withOutcome(Outcome other) {
    Copy copy = new Copy();
    copy.outcome = other;
    return copy.question();
  }

  /** The same question on a clock. */
  public Question withClock(Optional<Clock> other) {
    Copy copy = new Copy();
    copy.clock = other;
    return copy.question();
  }

  /** The same question with another rule for values that do not say where they start. */
  public Question withUnstatedClock(Optional<UnstatedClock> other) {
    Copy copy = new Copy();
    copy.unstatedClock = other;
    return copy.question();
  }

  /** The same question of another definition, or of every one. */
  public Question withDefinition(Optional<DefinitionAsked> other) {
    Copy copy = new Copy();
    copy.definition = other;
    return copy.question();
  }

  /** The same question among other arms. */
  public Question withAmong(SearchRequest other) {
    Copy copy = new Copy();
    copy.among = other;
    return copy.question();
  }

  /** The same question with other conversions. */
  public Question withConversions(Conversions other) {
    Copy copy = new Copy();
    copy.conversions = other;
    return copy.question();
  }

  /** The same question in a form of counting, or in that of more series. */
  public Question withCountedAs(Optional<CountedAs> other) {
    Copy copy = new Copy();
    copy.countedAs = other;
    return copy.question();
  }

  /** The same question with another rule for studies that may share patients. */
  public Question withSuspectedOverlap(SuspectedOverlap other) {
    Copy copy = new Copy();
    copy.suspectedOverlap = other;
    return copy.question();
  }

  /** The same question to studies whose extraction has come so far at least; empty for all. */
  public Question withLeastStatus(Optional<ExtractionStatus> other) {
    Copy copy = new Copy();
    copy.leastStatus = other;
    return copy.question();
  }

  /** The parts of this question, of which one is changed. */
  private final class Copy {
    private Outcome outcome = Question.this.outcome;
    private SearchRequest among = Question.this.among;
    private Optional<Clock> clock = Question.this.clock;
    private Optional<UnstatedClock> unstatedClock = Question.this.unstatedClock;
    private Optional<ExtractionStatus> leastStatus = Question.this.leastStatus;
    private Optional<DefinitionAsked> definition = Question.this.definition;
    private Conversions conversions = Question.this.conversions;
    private Optional<CountedAs> countedAs = Question.this.countedAs;
    private SuspectedOverlap suspectedOverlap = Question.this.suspectedOverlap;

    Question question() {
      return new Question(
          outcome,
          among,
          clock,
          unstatedClock,
          minimumPatients,
          leastStatus,
          definition,
          conversions,
          countedAs,
          suspectedOverlap);
    }
  }

  /** An outcome among arms, with the usual minimum of patients. */
  public static Question about(Outcome outcome, SearchRequest among) {
    return new Question(outcome, among, Optional.empty(), USUAL_MINIMUM_PATIENTS);
  }
}
