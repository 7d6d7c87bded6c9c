package gapwise.appraisal;

import gapwise.evidence.Appraisal;
import gapwise.evidence.vocabulary.Instrument;
import java.util.Optional;

/**
 * What the answers of an instrument count together, beside the most that the items asked could
 * count. Never a weight, and without bands: the publications have none, and those that papers add
 * contradict each other.
 *
 * @param counted sum of the answers
 * @param most the most that the same items could have counted
 * @param what such as points or stars
 */
public record Points(int counted, int most, String what) {
  /** The sum; empty where the instrument counts nothing or items are still unanswered. */
  static Optional<Points> of(Appraisal appraisal) {
    Instrument instrument = appraisal.instrument();
    if (instrument.points().isEmpty() || !Asked.unanswered(appraisal).isEmpty()) {
      return Optional.empty();
    }
    int counted = 0;
    int most = 0;
    for (Instrument.Item item : Asked.items(appraisal)) {
      counted += appraisal.judged(item).orElseThrow().points().orElse(0);
      most += instrument.most(item);
    }
    return Optional.of(new Points(counted, most, instrument.points().get()));
  }
}
