package gapwise.figure.funnel;

import gapwise.figure.drawing.Ticks;
import gapwise.figure.value.Shown;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * How the even axis of a funnel is told to people: effects lie on their analysis scale, as standard
 * errors do, and the numbers at the ticks are what people read.
 */
public enum FunnelScale {
  /** The number itself. */
  AS_IS,
  /** The logarithm of a ratio, a mean or a rate. */
  LOGARITHM,
  /** The logit of a proportion, told of 100. */
  LOGIT;

  /** Beyond this no exponential can be told. */
  private static final double FARTHEST = 600;

  private static final double[] OF_100 = {
    0.01, 0.1, 1, 2, 5, 10, 20, 30, 40, 50, 60, 70, 80, 90, 95, 98, 99, 99.9, 99.99
  };

  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

  /** Steps of 100 from coarse to fine; a shorter stretch than the last shows is no axis. */
  private static final List<BigDecimal> STEPS_OF_100 =
      Stream.of("20", "10", "5", "2", "1", "0.5", "0.2", "0.1", "0.05", "0.02", "0.01")
          .map(BigDecimal::new)
          .toList();

  /** A tick: where it lies on the analysis scale, and its words. */
  record Tick(double at, String words) {}

  /** The stretch of an axis and its ticks. */
  record Stretch(double lower, double upper, List<Tick> ticks) {
    Stretch {
      ticks = List.copyOf(ticks);
    }
  }

  /** An axis that covers two values, with at most so many ticks. */
  Stretch covering(double lower, double upper, int most) {
    boolean tellable = Math.max(Math.abs(lower), Math.abs(upper)) < FARTHEST;
    if (this == LOGARITHM && tellable) {
      Ticks ticks = Ticks.logarithmic(Math.exp(lower), Math.exp(upper), most);
      return new Stretch(
          Math.log(ticks.lower()),
          Math.log(ticks.upper()),
          ticks.values().stream()
              .map(value -> new Tick(Math.log(value.doubleValue()), plain(value)))
              .toList());
    }
    if (this == LOGIT) {
      return new Stretch(lower, upper, of100(lower, upper));
    }
    Ticks ticks = Ticks.linear(lower, upper, most);
    return new Stretch(
        ticks.lower(),
        ticks.upper(),
        ticks.values().stream().map(value -> new Tick(value.doubleValue(), plain(value))).toList());
  }

  /**
   * The usual numbers of 100 between two logits; on a stretch too short for three of them,
   * multiples of the largest round step that gives three.
   */
  private static List<Tick> of100(double lower, double upper) {
    List<Tick> usual =
        within(Arrays.stream(OF_100).mapToObj(BigDecimal::valueOf).toList(), lower, upper);
    for (int i = 0; i < STEPS_OF_100.size() && usual.size() < Ticks.FEWEST; i++) {
      usual = within(multiples(STEPS_OF_100.get(i), lower, upper), lower, upper);
    }
    return usual;
  }

  private static List<Tick> within(List<BigDecimal> of100, double lower, double upper) {
    return of100.stream()
        .map(value -> new Tick(logit(value.doubleValue() / 100), plain(value)))
        .filter(tick -> lower <= tick.at() && tick.at() <= upper)
        .toList();
  }

  /** Multiples of a step strictly between 0 and 100 that may lie between two logits. */
  private static List<BigDecimal> multiples(BigDecimal step, double lower, double upper) {
    BigDecimal first = nearest(lower, step, RoundingMode.FLOOR);
    BigDecimal last = nearest(upper, step, RoundingMode.CEILING);
    return Stream.iterate(first, at -> at.compareTo(last) <= 0, at -> at.add(step))
        .filter(at -> at.signum() > 0 && at.compareTo(HUNDRED) < 0)
        .toList();
  }

  private static BigDecimal nearest(double logit, BigDecimal step, RoundingMode mode) {
    return BigDecimal.valueOf(100 / (1 + Math.exp(-logit))).divide(step, 0, mode).multiply(step);
  }

  private static double logit(double proportion) {
    return Math.log(proportion) - Math.log1p(-proportion);
  }

  private static String plain(BigDecimal value) {
    String digits = value.signum() == 0 ? "0" : value.abs().stripTrailingZeros().toPlainString();
    return value.signum() < 0 ? "\u2212" + digits : digits;
  }

  /** A value of the analysis scale as people read it. */
  String shown(double value) {
    if (this == LOGIT) {
      return Shown.of100(1 / (1 + Math.exp(-value)));
    }
    return this == LOGARITHM && Math.abs(value) < FARTHEST
        ? Shown.ratio(Math.exp(value))
        : Shown.difference(value, "");
  }
}
