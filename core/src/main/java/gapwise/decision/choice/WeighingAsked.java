package gapwise.decision.choice;

import gapwise.decision.option.Aspect;
import gapwise.decision.weighing.Wishes;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * How a table is to be weighed.
 *
 * @param aspects outcomes that are weighed, each once
 * @param ranges what a weight speaks of, where another than the usual is named
 * @param wishes what is said of the weights, outcomes by their codes
 * @param unknowns what becomes of what is not known
 * @param seed the same seed gives the same result
 */
public record WeighingAsked(
    List<Aspect> aspects, Map<Aspect, Range> ranges, Wishes wishes, Unknowns unknowns, long seed) {
  public WeighingAsked {
    aspects = List.copyOf(aspects);
    ranges = Map.copyOf(ranges);
    Objects.requireNonNull(wishes, "wishes");
    Objects.requireNonNull(unknowns, "unknowns");
    if (aspects.isEmpty() || EnumSet.copyOf(aspects).size() < aspects.size()) {
      throw new IllegalArgumentException("one outcome or more, each once, were " + aspects);
    }
  }
}
