package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.ArmFollowUp;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.SelectedRow;
import gapwise.wording.FollowUps;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Series whose patients were not followed long enough for an outcome to show, so that their numbers
 * read better than they are.
 *
 * @param leastMonths follow-up below which a result of the outcome is not to be believed (common
 *     practice, no source)
 * @param shorter series followed for less, by mean or median
 * @param unknown series that do not say
 * @param series all series
 */
public record ShortFollowUp(double leastMonths, int shorter, int unknown, int series) {

  /** The short series among some; empty where none is, or nothing is known of the outcome. */
  public static Optional<ShortFollowUp> of(Outcome outcome, List<SelectedRow> rows) {
    if (outcome.leastFollowUpMonths().isEmpty()) {
      return Optional.empty();
    }
    double least = outcome.leastFollowUpMonths().getAsDouble();
    int shorter = 0;
    int unknown = 0;
    for (SelectedRow row : rows) {
      Optional<ArmFollowUp> followUp = ArmFollowUp.of(row.study(), row.arm());
      if (followUp.flatMap(each -> each.reaches(least)).isEmpty()) {
        unknown++;
      } else if (!followUp.get().reaches(least).get()) {
        shorter++;
      }
    }
    return shorter + unknown == 0
        ? Optional.empty()
        : Optional.of(new ShortFollowUp(least, shorter, unknown, rows.size()));
  }

  /**
   * Such as "3 of 12 series were followed for less than 24 months on average, 2 do not say how long
   * (that limit is common practice, no source)".
   */
  public String words() {
    String months = FollowUps.plain(leastMonths);
    if (shorter == 0) {
      return say(
          "answer.follow-up-silent", Map.of("silent", unknown, "series", series, "months", months));
    }
    return unknown == 0
        ? say(
            "answer.follow-up-short",
            Map.of("shorter", shorter, "series", series, "months", months))
        : say(
            "answer.follow-up-short-or-silent",
            Map.of("shorter", shorter, "silent", unknown, "series", series, "months", months));
  }
}
