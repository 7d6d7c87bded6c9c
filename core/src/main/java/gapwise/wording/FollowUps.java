package gapwise.wording;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.ArmFollowUp;
import gapwise.evidence.unit.Unit;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** How long patients were followed, in words. */
public final class FollowUps {
  private FollowUps() {}

  /** Such as "24 months", "at least 12 months" or "not stated". */
  public static String words(Optional<ArmFollowUp> followUp) {
    OptionalDouble least = followUp.map(ArmFollowUp::leastMonths).orElse(OptionalDouble.empty());
    if (least.isEmpty()) {
      return say("wording.not-stated");
    }
    return say(
        followUp.get().centreMonths().isPresent() ? "wording.followed" : "wording.followed-least",
        Map.of("months", Shown.reported(Quantity.mean(Unit.MONTHS.symbol()), least.getAsDouble())));
  }

  /** What a group must reach to be taken, such as "followed at least 24 months on average". */
  public static String atLeast(double months) {
    return say("wording.followed-on-average", Map.of("months", plain(months)));
  }

  /** A number of months that somebody set, as they would write it: "24", "7.5". */
  public static String plain(double months) {
    return BigDecimal.valueOf(months).stripTrailingZeros().toPlainString();
  }
}
