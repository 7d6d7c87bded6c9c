package gapwise.decision.choice;

import gapwise.decision.option.Aspect;
import gapwise.figure.value.Quantity;
import java.util.Optional;

/**
 * The worst and the best that a weight of an outcome speaks of, fixed before its numbers are looked
 * at, in the numbers that people read: of 100, months, operations.
 *
 * @param worst worth nothing; finite
 * @param best worth everything; finite, other than the worst
 */
public record Range(double worst, double best) {
  public Range {
    if (!(Double.isFinite(worst) && Double.isFinite(best) && worst != best)) {
      throw new IllegalArgumentException("no range: " + worst + " to " + best);
    }
  }

  /**
   * The range that is taken where nobody names one (union and months: as fixed beforehand for this
   * tool; the others common practice, no source); empty for what has no usual unit.
   */
  public static Optional<Range> usual(Aspect aspect) {
    return switch (aspect) {
      case UNION -> Optional.of(new Range(50, 100));
      case INFECTION, DONOR_SITE -> Optional.of(new Range(50, 0));
      case LATER_AMPUTATION -> Optional.of(new Range(30, 0));
      case UNPLANNED_OPERATION -> Optional.of(new Range(60, 0));
      case OPERATIONS -> Optional.of(new Range(8, 0));
      case FRAME_TIME -> Optional.of(new Range(24, 0));
      case FULL_WEIGHT -> Optional.of(new Range(36, 0));
      case FUNCTION, WORK -> Optional.of(new Range(0, 100));
      case COST -> Optional.empty();
    };
  }

  /** The unit of {@link #usual}: empty for shares of 100. */
  private static String unit(Aspect aspect) {
    return switch (aspect) {
      case FRAME_TIME, FULL_WEIGHT -> "months";
      case OPERATIONS -> "per patient";
      default -> "";
    };
  }

  /** The usual range, where the numbers of an outcome are in its unit. */
  static Optional<Range> usual(Aspect aspect, Quantity measure) {
    boolean share = measure.kind() == Quantity.Kind.OF_100;
    return usual(aspect)
        .filter(range -> share ? unit(aspect).isEmpty() : unit(aspect).equals(measure.unit()));
  }

  /** A place within it, 0 at the worst, 1 at the best. */
  double at(double part) {
    return worst + part * (best - worst);
  }
}
