package gapwise.synthesis.pooling;

import gapwise.effect.StudyData;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Pooling of counts without taking the effect of each study first. Listed here: Mantel and Haenszel
 * for each measure of two groups.
 */
public interface CountPooling {
  /**
   * Pools.
   *
   * @param studies counts of the kind the measure has; not corrected for zero cells
   * @param level of the interval, above 0 and below 1
   */
  Pooled pool(List<? extends StudyData> studies, double level);

  /**
   * Pools without the study at each place. Unless a way of pooling knows better, each is pooled
   * anew, so time grows with the square of their number.
   */
  default List<PooledValue> withoutEach(List<? extends StudyData> studies, double level) {
    return IntStream.range(0, studies.size())
        .mapToObj(
            omitted -> {
              List<StudyData> rest = new ArrayList<>(studies);
              rest.remove(omitted);
              return PooledValue.of(pool(rest, level), rest.size());
            })
        .toList();
  }

  /** Mantel and Haenszel's pooling of a measure; empty if it has none. */
  static Optional<CountPooling> mantelHaenszel(String measure) {
    return Optional.ofNullable(
        switch (measure) {
          case "odds-ratio" -> new MantelHaenszelOddsRatio();
          case "risk-ratio" -> new MantelHaenszelRiskRatio();
          case "risk-difference" -> new MantelHaenszelRiskDifference();
          case "incidence-rate-ratio" -> new MantelHaenszelRateRatio();
          default -> null;
        });
  }
}
