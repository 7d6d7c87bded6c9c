package gapwise.selection;

import static gapwise.sentence.Sentences.say;

import gapwise.search.IndexedArm;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/**
 * Hands on the arms that can be pooled, and counts those that are shown and never pooled, so that
 * counts of what there is hold no more than what results are made of.
 */
public final class PoolableArms implements Consumer<IndexedArm> {
  private final Consumer<IndexedArm> counting;
  private final Map<String, Integer> apart = new TreeMap<>();

  /**
   * @param counting takes the arms that can be pooled
   */
  public PoolableArms(Consumer<IndexedArm> counting) {
    this.counting = Objects.requireNonNull(counting, "counting");
  }

  @Override
  public void accept(IndexedArm arm) {
    arm.apart()
        .ifPresentOrElse(why -> apart.merge(why, 1, Integer::sum), () -> counting.accept(arm));
  }

  /** How many were kept apart, and why; empty where none was. */
  public Optional<String> keptApart() {
    if (apart.isEmpty()) {
      return Optional.empty();
    }
    int groups = apart.values().stream().mapToInt(Integer::intValue).sum();
    String why =
        apart.entrySet().stream()
            .map(
                one ->
                    say(
                        "selection.groups-kept-apart-why",
                        Map.of("groups", one.getValue(), "why", one.getKey())))
            .collect(Collectors.joining(", "));
    return Optional.of(say("selection.groups-kept-apart", Map.of("groups", groups, "why", why)));
  }
}
