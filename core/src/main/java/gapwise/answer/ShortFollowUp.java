package gapwise.answer;

import gapwise.evidence.ArmFollowUp;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.SelectedRow;
import gapwise.sentence.Counted;
import gapwise.wording.FollowUps;
import java.util.ArrayList;
import java.util.List;
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
    List<String> parts = new ArrayList<>();
    if (shorter > 0) {
      parts.add(
          of(shorter)
              + (shorter == 1 ? " was" : " were")
              + " followed for less than "
              + FollowUps.plain(leastMonths)
              + " months on average");
    }
    if (unknown > 0) {
      String silent = shorter > 0 ? String.valueOf(unknown) : of(unknown);
      String how =
          shorter > 0
              ? " how long"
              : " whether they followed for " + FollowUps.plain(leastMonths) + " months";
      parts.add(silent + (unknown == 1 ? " does" : " do") + " not say" + how);
    }
    return String.join(", ", parts) + " (that limit is common practice, no source)";
  }

  private String of(int some) {
    return some + " of " + Counted.of(series, "series", "series");
  }
}
