package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Told;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.util.Map;

/** A value of an outcome with its unit: "87 of 100", "8.3 months". */
final class Amount {
  private Amount() {}

  static String of(Outcome outcome, double value) {
    Quantity measure = Told.measure(outcome);
    String shown = Shown.value(measure, value);
    if (measure.kind() == Quantity.Kind.OF_100) {
      return say("claim.of-a-hundred", Map.of("value", shown));
    }
    return measure.unit().isEmpty()
        ? shown
        : say("claim.in-unit", Map.of("value", shown, "unit", measure.unit()));
  }
}
