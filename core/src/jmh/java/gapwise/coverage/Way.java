package gapwise.coverage;

import gapwise.effect.Interval;
import java.util.Map;
import java.util.function.Function;

/**
 * A way of making 95 % intervals.
 *
 * @param words what the tables call it
 * @param intervals those it has; without those it has none of for these series
 */
record Way<D extends Drawn>(String words, Function<D, Map<Target, Interval>> intervals) {
  static final double LEVEL = 0.95;
}
