package gapwise.synthesis.patients;

import java.util.OptionalDouble;

/**
 * Events in an arm whose patients are not known one by one.
 *
 * @param events from 0 to total
 * @param total above 0
 * @param moderator its mean in the arm
 * @param spread its standard deviation in the arm, at least 0, if reported
 */
public record CountArm(double events, double total, double moderator, OptionalDouble spread) {
  public CountArm {
    boolean counts = events >= 0 && events <= total && total > 0 && Double.isFinite(total);
    if (!counts || !Double.isFinite(moderator) || !(spread.orElse(0) >= 0)) {
      throw new IllegalArgumentException(
          "no arm: " + events + " of " + total + " at " + moderator + ", spread " + spread);
    }
  }
}
