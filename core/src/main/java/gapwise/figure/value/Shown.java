package gapwise.figure.value;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * The one formatter for numbers that people read. Sentence, row and table call it, so they never
 * disagree by rounding. Halves are rounded away from zero, on the decimal digits of the number. A
 * number is never rounded on to a bound it does not reach: 0.996 is "99.6" of 100, not "100".
 */
public final class Shown {
  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
  private static final String MINUS = "\u2212";

  /** Digits that stand together. */
  private static final int THOUSAND = 3;

  private Shown() {}

  /** A proportion from 0 to 1 as a whole number of 100; "99.6", "over 99.9" next to the bounds. */
  public static String of100(double proportion) {
    if (!(proportion >= 0 && proportion <= 1)) {
      throw new IllegalArgumentException("a proportion must lie from 0 to 1, was " + proportion);
    }
    BigDecimal exact = BigDecimal.valueOf(proportion).movePointRight(2);
    BigDecimal whole = exact.setScale(0, RoundingMode.HALF_UP);
    boolean onBound = whole.signum() == 0 || whole.compareTo(HUNDRED) == 0;
    if (!onBound || whole.compareTo(exact) == 0) {
      return whole.toPlainString();
    }
    BigDecimal tenths = exact.setScale(1, RoundingMode.HALF_UP);
    if (tenths.signum() == 0) {
      return "under 0.1";
    }
    return tenths.compareTo(HUNDRED) == 0 ? "over 99.9" : tenths.toPlainString();
  }

  /** A difference of proportions (-1 to 1) as more or fewer of 100, signed; 0 without a sign. */
  static String differenceOf100(double difference) {
    BigDecimal exact = BigDecimal.valueOf(Check.finite(difference, "difference")).movePointRight(2);
    BigDecimal whole = exact.setScale(0, RoundingMode.HALF_UP);
    if (whole.signum() != 0 || exact.signum() == 0) {
      return signed(whole);
    }
    return nearZero(exact, 1);
  }

  /**
   * A ratio with two decimals below 10, one below 100, none above; two digits below 0.1; "under
   * 0.001" and "over 1000" beyond, where digits say nothing. Next to 1, where the side matters, up
   * to four decimals.
   */
  public static String ratio(double ratio) {
    if (!(Check.finite(ratio, "ratio") >= 0)) {
      throw new IllegalArgumentException("a ratio must be 0 or more, was " + ratio);
    }
    BigDecimal exact = BigDecimal.valueOf(ratio);
    if (ratio > 0 && ratio < 0.001) {
      return "under 0.001";
    }
    if (ratio > 1000) {
      return "over 1000";
    }
    int decimals = ratio >= 99.95 ? 0 : ratio >= 9.995 ? 1 : ratio >= 0.0995 ? 2 : 3;
    BigDecimal rounded = exact.setScale(decimals, RoundingMode.HALF_UP);
    while (rounded.compareTo(BigDecimal.ONE) == 0 && ratio != 1 && decimals < 4) {
      decimals++;
      rounded = exact.setScale(decimals, RoundingMode.HALF_UP);
    }
    if (rounded.compareTo(BigDecimal.ONE) == 0 && ratio != 1) {
      return ratio < 1 ? "just under 1" : "just over 1";
    }
    return rounded.toPlainString();
  }

  /** Larger whole numbers are set as any other number of their measure. */
  private static final double MOST_WHOLE = 1000;

  /** A value as papers print it: a whole number has no fraction. */
  public static String reported(Quantity measure, double value) {
    return value == Math.rint(value) && Math.abs(value) < MOST_WHOLE
        ? Long.toString((long) value)
        : value(measure, value);
  }

  /** Months with one decimal. */
  public static String months(double months) {
    return plain(BigDecimal.valueOf(Check.finite(months, "months")), 1);
  }

  /** Centimetres with at most one decimal: "5.1", "6". */
  public static String centimetres(double centimetres) {
    BigDecimal tenths =
        BigDecimal.valueOf(Check.finite(centimetres, "centimetres"))
            .setScale(1, RoundingMode.HALF_UP);
    BigDecimal whole = tenths.setScale(0, RoundingMode.HALF_UP);
    return minus(whole.compareTo(tenths) == 0 ? whole.toPlainString() : tenths.toPlainString());
  }

  /** A number in any other unit: no decimals from 100, one from 1, two below; thousands apart. */
  public static String number(double value) {
    double size = Math.abs(Check.finite(value, "value"));
    int decimals = size >= 99.95 ? 0 : size >= 0.995 ? 1 : 2;
    return plain(BigDecimal.valueOf(value), decimals);
  }

  /** A difference in a unit, signed, with one decimal in months or cm and as a number else. */
  public static String difference(double value, String unit) {
    double size = Math.abs(Check.finite(value, "difference"));
    boolean tenths = unit.equals("months") || unit.equals("cm");
    int decimals = tenths ? 1 : size >= 99.95 ? 0 : size >= 9.95 ? 1 : 2;
    BigDecimal exact = BigDecimal.valueOf(value);
    BigDecimal rounded = exact.setScale(decimals, RoundingMode.HALF_UP);
    if (rounded.signum() != 0 || exact.signum() == 0) {
      return signed(rounded);
    }
    return nearZero(exact, decimals + 1);
  }

  /** A value of the measure, in its unit, without naming the unit. */
  public static String value(Quantity measure, double value) {
    return switch (measure.kind()) {
      case OF_100 -> of100(value);
      case DIFFERENCE_OF_100 -> differenceOf100(value);
      case RATIO -> ratio(value);
      case DIFFERENCE -> difference(value, measure.unit());
      case MEAN ->
          switch (measure.unit()) {
            case "months" -> months(value);
            case "cm" -> centimetres(value);
            default -> number(value);
          };
    };
  }

  /** Limits as "83 to 95". */
  public static String limits(Quantity measure, Limits limits) {
    return value(measure, limits.lower()) + " to " + value(measure, limits.upper());
  }

  /** An estimate as "90 (83 to 95)". */
  public static String estimate(Quantity measure, Estimate estimate) {
    String value = value(measure, estimate.value());
    return estimate.intervalKnown()
        ? value + " (" + limits(measure, estimate.limits()) + ")"
        : value + " (no SD)";
  }

  /** A share of weight in percent, one decimal: "12.5". */
  public static String weightPercent(double percent) {
    return plain(BigDecimal.valueOf(Check.finite(percent, "percent")), 1);
  }

  private static String nearZero(BigDecimal exact, int decimals) {
    BigDecimal finer = exact.setScale(decimals, RoundingMode.HALF_UP);
    if (finer.signum() != 0) {
      return signed(finer);
    }
    return exact.signum() < 0 ? "just under 0" : "just over 0";
  }

  private static String plain(BigDecimal value, int decimals) {
    BigDecimal rounded = value.setScale(decimals, RoundingMode.HALF_UP);
    return minus(grouped(rounded.toPlainString()));
  }

  /** Digits of a number with thousands set apart, as counts of a page are: "18,079". */
  public static String grouped(String digits) {
    int point = digits.indexOf('.');
    int end = point < 0 ? digits.length() : point;
    int first = digits.startsWith("-") ? 1 : 0;
    StringBuilder apart = new StringBuilder(digits);
    for (int at = end - THOUSAND; at > first; at -= THOUSAND) {
      apart.insert(at, ',');
    }
    return apart.toString();
  }

  private static String signed(BigDecimal value) {
    if (value.signum() == 0) {
      return "0";
    }
    return (value.signum() > 0 ? "+" : "") + minus(grouped(value.toPlainString()));
  }

  private static String minus(String digits) {
    return digits.startsWith("-") ? MINUS + digits.substring(1) : digits;
  }
}
