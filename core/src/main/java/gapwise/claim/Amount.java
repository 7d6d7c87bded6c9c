package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.util.Map;

/** A value with its unit: "87 of 100", "8.3 months", "18,079 EUR". */
final class Amount {
  private Amount() {}

  static String of(Quantity measure, double value) {
    String shown = Shown.value(measure, value);
    if (measure.kind() == Quantity.Kind.OF_100) {
      return say("claim.of-a-hundred", Map.of("value", shown));
    }
    return measure.unit().isEmpty()
        ? shown
        : say("claim.in-unit", Map.of("value", shown, "unit", measure.unit()));
  }
}
