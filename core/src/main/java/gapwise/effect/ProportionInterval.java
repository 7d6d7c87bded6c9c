package gapwise.effect;

import gapwise.numeric.BetaQuantile;
import gapwise.numeric.BracketedRoot;
import gapwise.numeric.ReferenceDistribution;
import java.util.Locale;
import org.apache.commons.numbers.gamma.LogGamma;
import org.apache.commons.numbers.gamma.RegularizedBeta;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Intervals for one proportion from x events in n patients. Compared by Newcombe, Stat Med
 * 1998;17:857 and Brown, Cai and DasGupta, Stat Sci 2001;16:101.
 */
public enum ProportionInterval {
  /** Clopper and Pearson, Biometrika 1934;26:404: exact, never covers less than it says. */
  CLOPPER_PEARSON {
    @Override
    public Interval of(ArmCounts counts, double level) {
      double x = counts.events();
      double n = counts.total();
      double tail = (1 - level) / 2;
      return new Interval(
          x == 0 ? 0 : BetaQuantile.lowerTail(tail, x, n - x + 1),
          x == n ? 1 : BetaQuantile.upperTail(tail, x + 1, n - x));
    }
  },
  /** Wilson, J Am Stat Assoc 1927;22:209: score interval. */
  WILSON {
    @Override
    public Interval of(ArmCounts counts, double level) {
      double z = z(level);
      double n = counts.total();
      double scale = 1 + z * z / n;
      double centre = (counts.proportion() + z * z / (2 * n)) / scale;
      double half =
          z
              / scale
              * Math.sqrt(counts.proportion() * counts.nonEvents() / n / n + z * z / (4 * n * n));
      return within(
          counts.events() == 0 ? 0 : centre - half, counts.nonEvents() == 0 ? 1 : centre + half);
    }
  },
  /** Wilson's interval with continuity correction, Newcombe 1998, method 4, cut at 0 and 1. */
  WILSON_CONTINUITY_CORRECTED {
    @Override
    public Interval of(ArmCounts counts, double level) {
      double z = z(level);
      double n = counts.total();
      double p = counts.proportion();
      double q = counts.nonEvents() / n;
      double below = z * Math.sqrt(Math.max(0, z * z - 2 - 1 / n + 4 * p * (n * q + 1)));
      double above = z * Math.sqrt(Math.max(0, z * z + 2 - 1 / n + 4 * p * (n * q - 1)));
      double scale = 2 * (n + z * z);
      return within(
          counts.events() == 0 ? 0 : (2 * n * p + z * z - 1 - below) / scale,
          counts.nonEvents() == 0 ? 1 : (2 * n * p + z * z + 1 + above) / scale);
    }
  },
  /** Equal-tailed with Jeffreys' prior, 0 at no events and 1 at all, Brown and colleagues 2001. */
  JEFFREYS {
    @Override
    public Interval of(ArmCounts counts, double level) {
      double a = counts.events() + 0.5;
      double b = counts.nonEvents() + 0.5;
      double tail = (1 - level) / 2;
      return new Interval(
          counts.events() == 0 ? 0 : BetaQuantile.lowerTail(tail, a, b),
          counts.nonEvents() == 0 ? 1 : BetaQuantile.upperTail(tail, a, b));
    }
  },
  /** Agresti and Coull, Am Stat 1998;52:119; can pass 0 and 1. */
  AGRESTI_COULL {
    @Override
    public Interval of(ArmCounts counts, double level) {
      double z = z(level);
      double n = counts.total() + z * z;
      double p = (counts.events() + z * z / 2) / n;
      double half = z * Math.sqrt(p * (1 - p) / n);
      return new Interval(p - half, p + half);
    }
  },
  /** Exact with half the probability of what was seen, Newcombe 1998, method 6. */
  MID_P {
    @Override
    public Interval of(ArmCounts counts, double level) {
      double x = counts.events();
      double n = counts.total();
      double tail = (1 - level) / 2;
      double lower =
          x == 0
              ? 0
              : BracketedRoot.find(
                      p -> beyond(x, n - x, p) + probability(x, n, p) / 2 - tail, 0, x / n)
                  .value();
      double upper =
          x == n
              ? 1
              : BracketedRoot.find(
                      p -> tail - beyond(n - x, x, 1 - p) - probability(x, n, p) / 2, x / n, 1)
                  .value();
      return new Interval(lower, upper);
    }
  },
  /** Proportions whose log likelihood is within half a chi-squared point of the top. */
  LIKELIHOOD_RATIO {
    @Override
    public Interval of(ArmCounts counts, double level) {
      double x = counts.events();
      double n = counts.total();
      double drop = ChiSquaredDistribution.of(1).inverseSurvivalProbability(1 - level) / 2;
      double top = logLikelihood(x, n, x / n);
      return new Interval(
          x == 0
              ? 0
              : BracketedRoot.find(p -> logLikelihood(x, n, p) - top + drop, 0, x / n).value(),
          x == n
              ? 1
              : BracketedRoot.find(p -> top - drop - logLikelihood(x, n, p), x / n, 1).value());
    }
  },
  /** Estimate and normal multiple of its standard error; of no width at 0 and 1, can pass them. */
  WALD {
    @Override
    public Interval of(ArmCounts counts, double level) {
      double p = counts.proportion();
      double half = z(level) * Math.sqrt(p * counts.nonEvents()) / counts.total();
      return new Interval(p - half, p + half);
    }
  };

  /**
   * The interval.
   *
   * @param level above 0 and below 1, such as 0.95
   */
  public abstract Interval of(ArmCounts counts, double level);

  /** The word in a plan. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static double z(double level) {
    return ReferenceDistribution.normal().multiplier(level);
  }

  private static Interval within(double lower, double upper) {
    return new Interval(Math.max(0, lower), Math.min(1, upper));
  }

  /** The probability of more than x events when y patients have none at x. */
  private static double beyond(double x, double y, double p) {
    return y == 0 ? 0 : RegularizedBeta.value(p, x + 1, y);
  }

  private static double probability(double x, double n, double p) {
    double logChoose = LogGamma.value(n + 1) - LogGamma.value(x + 1) - LogGamma.value(n - x + 1);
    return Math.exp(logChoose + logLikelihood(x, n, p));
  }

  private static double logLikelihood(double x, double n, double p) {
    return (x == 0 ? 0 : x * Math.log(p)) + (x == n ? 0 : (n - x) * Math.log1p(-p));
  }
}
