package gapwise.place;

import static gapwise.sentence.Sentences.say;

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

  /** Such as "usually 5 to 9 months (the middle half of the averages of 12 series)". */
  String words() {
    String first = CaseWords.number(from);
    String last = CaseWords.number(to);
    if (series == 1 || first.equals(last)) {
      return say("place.usual-same", Map.of("months", CaseWords.months(to), "series", series));
    }
    return say(
        middle ? "place.usual-middle" : "place.usual-few",
        Map.of("from", first, "to", last, "series", series));
  }
}
