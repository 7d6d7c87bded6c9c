package gapwise.decision.sheet;

import static gapwise.sentence.Sentences.say;

import java.util.Map;

/** Whole numbers for patients: of 100, and months. */
final class Whole {
  private static final int HUNDRED = 100;

  private Whole() {}

  /** "88", "fewer than 1", "over 99": whole, and never rounded on to a bound it does not reach. */
  static String of100(double share) {
    long whole = Math.round(share * HUNDRED);
    if (whole == 0 && share > 0) {
      return say("sheet.fewer-than-one");
    }
    return whole == HUNDRED && share < 1 ? say("sheet.over-most") : Long.toString(whole);
  }

  static String months(double months) {
    return say("sheet.months", Map.of("months", (int) Math.round(months)));
  }
}
