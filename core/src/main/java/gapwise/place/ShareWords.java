package gapwise.place;

import static gapwise.sentence.Sentences.say;

import java.util.HashMap;
import java.util.Map;

/** A share of new series in rounded words: such numbers carry no more than a tenth. */
final class ShareWords {
  private static final double TWENTIETH = 0.05;

  private final double below;
  private final Milestone milestone;
  private final String of;

  private ShareWords(double below, Milestone milestone, String of) {
    this.below = below;
    this.milestone = milestone;
    this.of = of;
  }

  /**
   * How the value of a case stands to new series, within a sentence.
   *
   * @param below share of new series expected below it, 0 to 1
   * @param milestone what was reached
   * @param of whose series, such as "bone transport"
   * @return such as "earlier than about 8 in 10 new series of X would be expected to report"
   */
  static String stands(double below, Milestone milestone, String of) {
    return new ShareWords(below, milestone, of).within();
  }

  /** The same as a sentence of its own. */
  static String sentence(double below, Milestone milestone, String of) {
    return new ShareWords(below, milestone, of).alone();
  }

  /** The same as a sentence about series with as long a defect. */
  static String sentenceByLength(double below, Milestone milestone, String of) {
    return new ShareWords(below, milestone, of).ofSuchLength();
  }

  private String within() {
    if (isMiddle()) {
      return say("place.middle-within", Map.of("method", of));
    }
    Map<String, Object> values = values(than().word());
    if (isNearlyAll()) {
      return say(
          milestone.isTime() ? "place.nearly-all-times-within" : "place.nearly-all-costs-within",
          values);
    }
    return say("place.tenths-within", values);
  }

  private String alone() {
    if (isMiddle()) {
      return say("place.middle", Map.of("method", of));
    }
    Map<String, Object> values = values(than().first());
    if (isNearlyAll()) {
      return say(milestone.isTime() ? "place.nearly-all-times" : "place.nearly-all-costs", values);
    }
    return say("place.tenths", values);
  }

  private String ofSuchLength() {
    if (isMiddle()) {
      return say("place.middle-of-length", Map.of("method", of));
    }
    Map<String, Object> values = values(than().first());
    if (isNearlyAll()) {
      return say(
          milestone.isTime()
              ? "place.nearly-all-times-of-length"
              : "place.nearly-all-costs-of-length",
          values);
    }
    return say("place.tenths-of-length", values);
  }

  private boolean isMiddle() {
    return Math.abs(below - 0.5) < TWENTIETH;
  }

  private boolean isNearlyAll() {
    return passed() > 1 - TWENTIETH;
  }

  private double passed() {
    return Math.max(1 - below, below);
  }

  private Comparative than() {
    return 1 - below > below ? milestone.less() : milestone.more();
  }

  private Map<String, Object> values(String than) {
    Map<String, Object> values = new HashMap<>(Map.of("method", of, "than", than));
    if (isNearlyAll()) {
      values.put("such", than().plain());
    } else {
      values.put("tenths", Math.min(9, Math.round(10 * passed())));
    }
    return values;
  }
}
