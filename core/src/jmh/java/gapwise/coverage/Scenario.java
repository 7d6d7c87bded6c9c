package gapwise.coverage;

import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.Function;

/**
 * A world from which studies are drawn.
 *
 * @param <D> what is drawn
 * @param series how many there are
 * @param middle what the tables call everything else that is true of it, such as a median rate
 * @param tau standard deviation between series on the analysis scale; empty if every replicate
 *     draws its own
 * @param draw makes one replicate
 */
record Scenario<D extends Drawn>(
    int series, String middle, OptionalDouble tau, Function<SplittableRandom, D> draw) {
  /** What the tables call its spread. */
  String spread() {
    return tau.isPresent() ? String.valueOf(tau.getAsDouble()) : "drawn";
  }
}
