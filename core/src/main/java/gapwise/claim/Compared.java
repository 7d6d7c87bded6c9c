package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Shown;
import java.util.Optional;

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
