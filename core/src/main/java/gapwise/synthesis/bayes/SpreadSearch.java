package gapwise.synthesis.bayes;

import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * Where the posterior of tau lies, on the scale of its places, where its logarithm is nearly a
 * parabola: about the top, to which parabolas through three places lead, one after the other.
 */
final class SpreadSearch {
  /** A place that lies below another by more holds nothing of what is told. */
  private static final double SEEN = 22;

  /** Each may go twice as far as the one before. */
  private static final int MOST_STEPS = 12;

  /** A top that moves by less of its own spread is near enough for a stretch about it. */
  private static final double NEAR = 0.5;

  /** A stretch reaches a little farther than the density must. */
  private static final double SPARE = 1.1;

  private SpreadSearch() {}

  /**
   * Edges of two stretches to start from, which meet at the top unless the density is seen where
   * the support starts. In one, points would be too far apart for what is summed over them.
   *
   * @param log logarithm of the density up to a constant
   * @param thought where it is thought to lie, within the support
   * @param support where there is any; ends
   */
  static List<Double> edges(DoubleUnaryOperator log, Stretch.Range thought, Stretch.Range support) {
    double middle = thought.from() + (thought.to() - thought.from()) / 2;
    List<Double> asThought = List.of(thought.from(), middle, thought.to());
    if (thought.from() == support.from()
        && log.applyAsDouble(support.from()) > log.applyAsDouble(middle) - SEEN) {
      return asThought;
    }
    double reach = (thought.to() - thought.from()) / 2;
    double farthest = reach;
    for (int i = 0; i < MOST_STEPS; i++) {
      double room = Math.min(middle - support.from(), support.to() - middle);
      double step = Math.min(reach / 4, room / 2);
      double left = log.applyAsDouble(middle - step);
      double here = log.applyAsDouble(middle);
      double right = log.applyAsDouble(middle + step);
      double bend = (2 * here - left - right) / (step * step);
      double slope = (right - left) / (2 * step);
      farthest *= 2;
      double move = bend > 0 ? slope / bend : Math.copySign(farthest, slope);
      middle = within(support, middle, middle + Math.max(-farthest, Math.min(farthest, move)));
      reach = bend > 0 ? FirstLook.REACH * SPARE / Math.sqrt(bend) : farthest;
      if (bend > 0 && Math.abs(move) * Math.sqrt(bend) <= NEAR) {
        return List.of(
            within(support, middle, middle - reach),
            middle,
            within(support, middle, middle + reach));
      }
    }
    return asThought;
  }

  /** A place that is wanted, or one on the way to it from another, short of the end. */
  private static double within(Stretch.Range support, double from, double wanted) {
    double lowest = support.from() + (from - support.from()) / 8;
    double highest = from + (support.to() - from) * 7 / 8;
    return Math.max(lowest, Math.min(highest, wanted));
  }
}
