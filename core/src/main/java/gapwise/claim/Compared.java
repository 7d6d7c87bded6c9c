package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Shown;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The first method of a claim set against the second, as people read it.
 *
 * @param effect how they are set against each other
 * @param studies that it rests on
 * @param patients in them, of the two methods or, for what goes through a third, of all
 * @param estimate above the value of no difference where the first gives more
 * @param prediction where a further study would lie, if it can be told
 */
public record Compared(
    Effect effect,
    Outcome outcome,
    int studies,
    long patients,
    double estimate,
    double lower,
    double upper,
    Optional<Limits> prediction) {

  /** Which way an interval points. */
  public enum Lean {
    FIRST_MORE,
    FIRST_LESS,
    OPEN
  }

  /** The side of no difference on which the whole interval lies. */
  public Lean lean() {
    if (lower > effect.none()) {
      return Lean.FIRST_MORE;
    }
    return upper < effect.none() ? Lean.FIRST_LESS : Lean.OPEN;
  }

  /** Whether the interval points the way that a claim does. */
  boolean supports(Direction direction) {
    return lean() == (direction == Direction.MORE ? Lean.FIRST_MORE : Lean.FIRST_LESS);
  }

  /** Whether a further study could lie on both sides of no difference. */
  boolean predictionOpen() {
    return prediction
        .filter(p -> p.lower() <= effect.none() && p.upper() >= effect.none())
        .isPresent();
  }

  /**
   * The difference between the methods where the second has a value: from 0 to 1 for shares, else
   * in the unit of the outcome.
   *
   * @param second value of the second method; for shares above 0 and below 1, else above 0
   */
  public Estimate difference(double second) {
    return Estimate.of(
        difference(second, estimate), difference(second, lower), difference(second, upper));
  }

  private double difference(double second, double number) {
    return switch (effect) {
      // Odds as risks: Zhang and Yu, JAMA 1998;280:1690.
      case ODDS_RATIO -> second * number / (1 - second + second * number) - second;
      case RATE_RATIO, RATIO_OF_MEANS -> second * (number - 1);
      case MEAN_DIFFERENCE -> number;
    };
  }

  /**
   * The number that stands for a difference, the inverse of {@link #difference}: empty where no
   * ratio gives it.
   *
   * @param second value of the second method, as above
   */
  public OptionalDouble numberOf(double second, double difference) {
    double first = second + difference;
    return switch (effect) {
      case ODDS_RATIO ->
          first > 0 && first < 1
              ? OptionalDouble.of(first / (1 - first) * (1 - second) / second)
              : OptionalDouble.empty();
      case RATE_RATIO, RATIO_OF_MEANS ->
          first > 0 ? OptionalDouble.of(first / second) : OptionalDouble.empty();
      case MEAN_DIFFERENCE -> OptionalDouble.of(difference);
    };
  }

  /** Whether it is of shares. */
  public boolean isOfShares() {
    return effect == Effect.ODDS_RATIO;
  }

  /** What it says of the methods of a claim, as part of a sentence. */
  String words(Claim claim) {
    return effect.words(outcome, claim.a().name(), claim.b().name(), estimate, lower, upper);
  }

  /** What kind of number it is. */
  public String kind() {
    return switch (effect) {
      case ODDS_RATIO -> "odds ratio";
      case RATE_RATIO -> "rate ratio";
      case RATIO_OF_MEANS -> "ratio of means";
      case MEAN_DIFFERENCE -> "difference of means";
    };
  }

  /** The estimate. */
  public String value() {
    return Shown.value(effect.figure(outcome), estimate);
  }

  /** The limits of its interval. */
  public String interval() {
    return Shown.limits(effect.figure(outcome), new Limits(lower, upper));
  }

  /** Where a further study would lie. */
  public String predicted() {
    return prediction
        .map(p -> Shown.limits(effect.figure(outcome), p))
        .orElseGet(() -> say("claim.prediction-unknown"));
  }
}
