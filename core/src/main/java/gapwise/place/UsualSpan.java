package gapwise.place;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.unit.Unit;
import java.util.Collection;
import java.util.List;
import java.util.Map;

/**
 * From where to where the averages of series run.
 *
 * @param series how many, 1 or more
 * @param from months
 * @param to months, from {@code from} on
 * @param middle whether these are the limits of the middle half; else those of all
 */
record UsualSpan(int series, double from, double to, boolean middle) {
  /** Fewer averages have no middle half worth a name; common practice, no source. */
  private static final int FEWEST_FOR_MIDDLE = 4;

  /** Fewer weeks are told in days; our choice. */
  private static final double FEWEST_WEEKS = 2;

  /**
   * The middle half of averages lies between their quartiles, by the rule that sets the k-th of n
   * at (k - 1)/(n - 1): definition 7 of Hyndman and Fan, The American Statistician 1996; 50:361-5.
   *
   * @param averages in months, at least one
   */
  static UsualSpan of(Collection<Double> averages) {
    List<Double> sorted = averages.stream().sorted().toList();
    boolean middle = sorted.size() >= FEWEST_FOR_MIDDLE;
    return new UsualSpan(
        sorted.size(),
        middle ? quantile(sorted, 0.25) : sorted.get(0),
        middle ? quantile(sorted, 0.75) : sorted.get(sorted.size() - 1),
        middle);
  }

  private static double quantile(List<Double> sorted, double share) {
    double position = share * (sorted.size() - 1);
    int below = (int) Math.floor(position);
    int above = Math.min(below + 1, sorted.size() - 1);
    return sorted.get(below) + (position - below) * (sorted.get(above) - sorted.get(below));
  }

  /**
   * Such as "usually 5 to 9 months (the middle half of the averages of 12 series)"; what is shorter
   * than a month in weeks or days, as one would say it.
   */
  String words() {
    String first = number(from);
    String last = number(to);
    if (series == 1 || first.equals(last)) {
      return say("place.usual-same", Map.of("time", longest(), "series", series));
    }
    return say(
        middle ? "place.usual-middle" : "place.usual-few",
        Map.of("from", first, "to", longest(), "series", series));
  }

  /** What {@code to} is told in decides for both. */
  private Unit unit() {
    if (to >= 1) {
      return Unit.MONTHS;
    }
    return Unit.MONTHS.to(Unit.WEEKS, to) >= FEWEST_WEEKS ? Unit.WEEKS : Unit.DAYS;
  }

  private String number(double months) {
    double value = Unit.MONTHS.to(unit(), months);
    return CaseWords.number(unit() == Unit.DAYS ? Math.round(value) : value);
  }

  private String longest() {
    return switch (unit()) {
      case WEEKS -> say("place.weeks", Map.of("weeks", number(to)));
      case DAYS -> say("place.days", Map.of("days", Math.round(Unit.MONTHS.to(Unit.DAYS, to))));
      default -> CaseWords.months(to);
    };
  }
}
