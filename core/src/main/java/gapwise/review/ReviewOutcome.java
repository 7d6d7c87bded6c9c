package gapwise.review;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Shown;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * An outcome that a review asks for.
 *
 * @param outcome its code
 * @param matters the difference from which on it matters, above 0: so many of 100 where it is
 *     counted as events, else in the unit of the outcome; empty where none is named
 * @param time when it is taken, in words; empty text where that is not said
 */
public record ReviewOutcome(String outcome, OptionalDouble matters, String time) {
  /** Longest words about the time. */
  public static final int LONGEST_TIME = 80;

  public ReviewOutcome {
    Objects.requireNonNull(matters, "matters");
    if (outcome.isBlank()) {
      throw new IllegalArgumentException("an outcome has a code");
    }
    if (matters.isPresent() && !(matters.getAsDouble() > 0 && matters.getAsDouble() < 1e6)) {
      throw new IllegalArgumentException("a difference that matters is above 0, was " + matters);
    }
    if (time.length() > LONGEST_TIME) {
      throw new IllegalArgumentException("the time has more than " + LONGEST_TIME + " letters");
    }
  }

  /** Its name; the code where the vocabulary has it no longer. */
  public String label() {
    return Outcome.vocabulary().find(outcome).map(Outcome::label).orElse(outcome);
  }

  /** The difference with its unit, "10 of 100" or "2 months"; empty text where none is named. */
  public String threshold() {
    if (matters.isEmpty()) {
      return "";
    }
    String number = Shown.centimetres(matters.getAsDouble());
    String unit = unit(outcome);
    return unit.isEmpty() ? number : say("review.amount", Map.of("number", number, "unit", unit));
  }

  /** In which unit a difference of an outcome is named: "of 100", "months"; empty for none. */
  public static String unit(String outcome) {
    return Outcome.vocabulary()
        .find(outcome)
        .map(
            one ->
                one.isEvent()
                    ? say("page.of-hundred")
                    : one.unit().map(unit -> unit.symbol()).orElse(""))
        .orElse("");
  }

  /** All of it in one line. */
  public String words() {
    Map<String, Object> places = new HashMap<>();
    places.put("outcome", time.isEmpty() ? label() : label() + ", " + time);
    if (matters.isEmpty()) {
      return say("review.outcome-without", places);
    }
    places.put("matters", threshold());
    return say("review.outcome", places);
  }
}
