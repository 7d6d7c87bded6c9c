package gapwise.decision.certainty;

import static gapwise.sentence.Sentences.say;

import java.util.Map;

/**
 * What a number may be called at each level (after Santesso et al., J Clin Epidemiol 2020;119:126;
 * the rows of low and very low from memory): one qualifier, from its own level only; at very low
 * neither size nor direction.
 */
public final class CertaintyWords {
  private CertaintyWords() {}

  /** How large a difference is against the least that matters (our choice). */
  public enum Size {
    LITTLE_OR_NONE,
    SMALL,
    MODERATE,
    LARGE;

    /**
     * @param difference absolute, of any sign
     * @param matters least difference that matters, above 0, in the same unit
     */
    public static Size of(double difference, double matters) {
      double times = Math.abs(difference) / matters;
      return times < 1 ? LITTLE_OR_NONE : times <= 2 ? SMALL : times < 4 ? MODERATE : LARGE;
    }
  }

  /**
   * A rate of one method: "about 85 of 100 joined", "probably about 85 of 100 joined".
   *
   * @param number such as "85 of 100"
   * @param such what became of them, such as "united"
   */
  public static String rate(Level level, String number, String such) {
    Map<String, String> places = Map.of("number", number, "such", such);
    return switch (level) {
      case HIGH -> say("certainty.rate-high", places);
      case MODERATE -> say("certainty.rate-moderate", places);
      case LOW -> say("certainty.rate-low", places);
      case VERY_LOW -> say("certainty.rate-very-low", places);
    };
  }

  /**
   * A difference between two methods: "probably more join".
   *
   * @param more whether the first has more; without bearing where little differs
   * @param become what they do, in the plural: "join"
   */
  public static String difference(Level level, Size size, boolean more, String become) {
    if (level == Level.VERY_LOW) {
      return say("certainty.difference-unknown");
    }
    String amount =
        switch (size) {
          case LITTLE_OR_NONE -> say("certainty.as-many");
          case SMALL -> more ? say("certainty.slightly-more") : say("certainty.slightly-fewer");
          case MODERATE -> more ? say("certainty.more") : say("certainty.fewer");
          case LARGE -> more ? say("certainty.many-more") : say("certainty.many-fewer");
        };
    Map<String, String> places = Map.of("amount", amount, "become", become);
    return switch (level) {
      case HIGH -> say("certainty.difference-high", places);
      case MODERATE -> say("certainty.difference-moderate", places);
      default -> say("certainty.difference-low", places);
    };
  }
}
