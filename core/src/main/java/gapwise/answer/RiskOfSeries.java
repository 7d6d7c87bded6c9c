package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.appraisal.StudyRisk;
import gapwise.evidence.vocabulary.Risk;
import gapwise.selection.Selection;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * How many of the series behind a result stand at each risk of bias, for the outcome of the
 * question; those that nobody judged are counted as such.
 *
 * @param counts series by risk, only those that there are
 */
public record RiskOfSeries(Map<Risk, Integer> counts) {
  public RiskOfSeries {
    Map<Risk, Integer> ordered = new EnumMap<>(Risk.class);
    ordered.putAll(counts);
    counts = Collections.unmodifiableMap(ordered);
  }

  /** The series of a selection. */
  public static RiskOfSeries of(Selection selection) {
    Map<Risk, Integer> counts = new EnumMap<>(Risk.class);
    selection
        .rows()
        .forEach(
            row ->
                counts.merge(
                    StudyRisk.of(row.study(), selection.question().outcome()), 1, Integer::sum));
    return new RiskOfSeries(counts);
  }

  /** All series. */
  public int series() {
    return counts.values().stream().mapToInt(Integer::intValue).sum();
  }

  /** Series at serious or critical risk. */
  public int high() {
    return counts.getOrDefault(Risk.SERIOUS, 0) + counts.getOrDefault(Risk.CRITICAL, 0);
  }

  /** Such as "Risk of bias of the 9 series, as people judged it: 2 low, 3 serious, 4 not rated". */
  public String words() {
    int notRated = counts.getOrDefault(Risk.NOT_RATED, 0);
    if (notRated == series()) {
      return say("answer.risk-of-none", Map.of("series", series()));
    }
    String told =
        say(
            "answer.risk-of-series",
            Map.of(
                "series",
                series(),
                "counts",
                counts.entrySet().stream()
                    .map(
                        one ->
                            say(
                                "answer.risk-counted",
                                Map.of(
                                    "number", one.getValue(), "risk", one.getKey().shortLabel())))
                    .collect(Collectors.joining(", "))));
    return notRated == 0 ? told : told + " " + say("answer.risk-not-rated");
  }
}
