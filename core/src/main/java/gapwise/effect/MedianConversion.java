package gapwise.effect;

import gapwise.effect.FiveNumbers.Beside;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Ways of guessing mean and standard deviation from a median and what stands beside it. All assume
 * a distribution near normal; for skewed times and lengths the result is a stand-in, to be marked
 * as such. A value is empty where the method does not fit what is reported.
 */
public enum MedianConversion {
  /**
   * Wan, Wang, Liu and Tong, BMC Med Res Methodol 2014;14:135: simple means; standard deviation
   * with normal quantiles for the sample size (the formulas, not the table).
   */
  WAN_2014 {
    @Override
    public OptionalDouble mean(FiveNumbers x) {
      return OptionalDouble.of(
          switch (x.beside()) {
            case RANGE -> (x.min() + 2 * x.median() + x.max()) / 4;
            case QUARTILES -> (x.q1() + x.median() + x.q3()) / 3;
            case BOTH -> eighths(x);
          });
    }

    @Override
    public OptionalDouble sd(FiveNumbers x) {
      if (x.n() < 2) {
        return OptionalDouble.empty();
      }
      return OptionalDouble.of(
          switch (x.beside()) {
            case RANGE -> fromRange(x);
            case QUARTILES -> fromQuartiles(x);
            case BOTH -> (fromRange(x) + fromQuartiles(x)) / 2;
          });
    }
  },
  /**
   * Luo, Wan, Liu and Tong, Stat Methods Med Res 2018;27:1785: mean with weights by sample size.
   */
  LUO_2018 {
    @Override
    public OptionalDouble mean(FiveNumbers x) {
      return OptionalDouble.of(
          switch (x.beside()) {
            case RANGE -> {
              double w = 4 / (4 + Math.pow(x.n(), 0.75));
              yield w * (x.min() + x.max()) / 2 + (1 - w) * x.median();
            }
            case QUARTILES -> {
              double w = 0.7 + 0.39 / x.n();
              yield w * (x.q1() + x.q3()) / 2 + (1 - w) * x.median();
            }
            case BOTH -> {
              double w = 2.2 / (2.2 + Math.pow(x.n(), 0.75));
              double u = 0.7 - 0.72 / Math.pow(x.n(), 0.55);
              yield w * (x.min() + x.max()) / 2
                  + u * (x.q1() + x.q3()) / 2
                  + (1 - w - u) * x.median();
            }
          });
    }
  },
  /**
   * Hozo, Djulbegovic and Hozo, BMC Med Res Methodol 2005;5:13, from a range: the median itself
   * serves as mean above 25 patients; standard deviation by formula up to 15 patients, a quarter of
   * the range up to 70, a sixth above.
   */
  HOZO_2005 {
    @Override
    public OptionalDouble mean(FiveNumbers x) {
      return x.beside() != Beside.RANGE
          ? OptionalDouble.empty()
          : x.n() > 25 ? OptionalDouble.of(x.median()) : HOZO_2005_WEIGHTED.mean(x);
    }

    @Override
    public OptionalDouble sd(FiveNumbers x) {
      if (x.beside() != Beside.RANGE) {
        return OptionalDouble.empty();
      }
      double range = x.max() - x.min();
      if (x.n() > 15) {
        return OptionalDouble.of(range / (x.n() > 70 ? 6 : 4));
      }
      double bend = x.min() - 2 * x.median() + x.max();
      return OptionalDouble.of(Math.sqrt((bend * bend / 4 + range * range) / 12));
    }
  },
  /** Hozo and colleagues 2005, equation 4 at any number of patients. */
  HOZO_2005_WEIGHTED {
    @Override
    public OptionalDouble mean(FiveNumbers x) {
      return x.beside() == Beside.RANGE ? WAN_2014.mean(x) : OptionalDouble.empty();
    }
  },
  /** Hozo and colleagues 2005, equation 3, with the term in the number of patients. */
  HOZO_2005_WITH_N {
    @Override
    public OptionalDouble mean(FiveNumbers x) {
      OptionalDouble weighted = HOZO_2005_WEIGHTED.mean(x);
      return weighted.isEmpty()
          ? weighted
          : OptionalDouble.of(
              weighted.getAsDouble() + (x.min() - 2 * x.median() + x.max()) / (4 * x.n()));
    }
  },
  /** Bland, Int J Stat Med Res 2015;4:57, from range and quartiles. */
  BLAND_2015 {
    @Override
    public OptionalDouble mean(FiveNumbers x) {
      return x.beside() == Beside.BOTH ? OptionalDouble.of(eighths(x)) : OptionalDouble.empty();
    }

    @Override
    public OptionalDouble sd(FiveNumbers x) {
      if (x.beside() != Beside.BOTH) {
        return OptionalDouble.empty();
      }
      // Bland's polynomial in the five numbers, taken about the median so that numbers that are
      // large beside their spread do not cancel.
      double a = x.min() - x.median();
      double b = x.q1() - x.median();
      double d = x.q3() - x.median();
      double e = x.max() - x.median();
      double mean = (a + 2 * b + 2 * d + e) / 8;
      double square = (a * a + 2 * b * b + 2 * d * d + e * e) / 16 + (a * b + d * e) / 8;
      return OptionalDouble.of(Math.sqrt(Math.max(0, square - mean * mean)));
    }
  };

  /** The mean; empty if the method does not fit what is reported. */
  public abstract OptionalDouble mean(FiveNumbers reported);

  /** The standard deviation; empty if the method gives none or does not fit what is reported. */
  public OptionalDouble sd(FiveNumbers reported) {
    return OptionalDouble.empty();
  }

  /** The word in a plan. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static double eighths(FiveNumbers x) {
    return (x.min() + 2 * x.q1() + 2 * x.median() + 2 * x.q3() + x.max()) / 8;
  }

  private static double fromRange(FiveNumbers x) {
    return SpreadConversion.range(x.min(), x.max(), x.n());
  }

  private static double fromQuartiles(FiveNumbers x) {
    return SpreadConversion.quartiles(x.q1(), x.q3(), x.n());
  }
}
