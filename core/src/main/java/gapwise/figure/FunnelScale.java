package gapwise.figure;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

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
      List<Tick> ticks = new ArrayList<>();
      DoubleStream.of(OF_100)
          .mapToObj(of100 -> new Tick(logit(of100 / 100), plain(BigDecimal.valueOf(of100))))
          .filter(tick -> lower <= tick.at() && tick.at() <= upper)
          .forEach(ticks::add);
      return new Stretch(lower, upper, ticks);
    }
    Ticks ticks = Ticks.linear(lower, upper, most);
    return new Stretch(
        ticks.lower(),
        ticks.upper(),
        ticks.values().stream().map(value -> new Tick(value.doubleValue(), plain(value))).toList());
  }

  private static double logit(double proportion) {
    return Math.log(proportion) - Math.log1p(-proportion);
  }

  private static String plain(BigDecimal value) {
    String digits = value.signum() == 0 ? "0" : value.abs().stripTrailingZeros().toPlainString();
    return value.signum() < 0 ? "\u2212" + digits : digits;
  }

  /** A value of the analysis scale as people read it. */
  public String shown(double value) {
    if (this == LOGIT) {
      return Shown.of100(1 / (1 + Math.exp(-value)));
    }
    return this == LOGARITHM && Math.abs(value) < FARTHEST
        ? Shown.ratio(Math.exp(value))
        : Shown.difference(value, "");
  }
}
