package gapwise.evidence.unit;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * A unit as papers print it. Values stay in the unit reported and are compared in the unit of their
 * dimension: months for times, centimetres for lengths, months per centimetre for indices.
 *
 * <p>A month is 30.44 days (365.25 / 12 rounded as the trade does), a week 7 days.
 */
public enum Unit {
  HOURS("hours", Dimension.TIME, 1 / (24 * Days.PER_MONTH), "hour", "h"),
  MINUTES("minutes", Dimension.TIME, 1 / (1440 * Days.PER_MONTH), "minute", "min"),
  DAYS("days", Dimension.TIME, 1 / Days.PER_MONTH, "day", "d"),
  WEEKS("weeks", Dimension.TIME, 7 / Days.PER_MONTH, "week", "wk", "w"),
  MONTHS("months", Dimension.TIME, 1, "month", "mo"),
  YEARS("years", Dimension.TIME, 12, "year", "y"),
  MILLIMETRES("mm", Dimension.LENGTH, 0.1, "millimetre", "millimetres", "millimeters"),
  CENTIMETRES("cm", Dimension.LENGTH, 1, "centimetre", "centimetres", "centimeters"),
  METRES("m", Dimension.LENGTH, 100, "metre", "metres", "meters"),
  DAYS_PER_CENTIMETRE("days/cm", Dimension.TIME_PER_LENGTH, 1 / Days.PER_MONTH, "d/cm"),
  DAYS_PER_MILLIMETRE("days/mm", Dimension.TIME_PER_LENGTH, 10 / Days.PER_MONTH, "d/mm"),
  WEEKS_PER_CENTIMETRE("weeks/cm", Dimension.TIME_PER_LENGTH, 7 / Days.PER_MONTH, "wk/cm"),
  MONTHS_PER_CENTIMETRE("months/cm", Dimension.TIME_PER_LENGTH, 1, "mo/cm", "month/cm"),
  CUBIC_CENTIMETRES("cm3", Dimension.VOLUME, 1, "cc"),
  MILLILITRES("ml", Dimension.VOLUME, 1, "millilitre", "millilitres", "milliliters"),
  POINTS("points", Dimension.SCORE, 1, "point"),
  PER_PATIENT("per patient", Dimension.COUNT, 1, "count"),
  PERCENT("%", Dimension.SHARE, 1, "percent"),
  DEGREES("degrees", Dimension.ANGLE, 1, "degree"),
  CURRENCY("currency", Dimension.MONEY, 1);

  /** What a unit measures; only values of one dimension can be compared. */
  public enum Dimension {
    TIME,
    LENGTH,
    TIME_PER_LENGTH,
    VOLUME,
    SCORE,
    COUNT,
    SHARE,
    ANGLE,
    MONEY
  }

  private static final class Days {
    static final double PER_MONTH = 30.44;
  }

  private final String symbol;
  private final Dimension dimension;
  private final double factor;
  private final Set<String> spellings;

  Unit(String symbol, Dimension dimension, double factor, String... spellings) {
    this.symbol = symbol;
    this.dimension = dimension;
    this.factor = factor;
    this.spellings = Set.of(spellings);
  }

  /** How the unit is printed and written in templates, such as {@code months/cm}. */
  @JsonValue
  public String symbol() {
    return symbol;
  }

  public Dimension dimension() {
    return dimension;
  }

  /**
   * Carries a value into another unit of the same dimension.
   *
   * @throws IllegalArgumentException when the dimensions differ
   */
  public double to(Unit other, double value) {
    if (other.dimension != dimension) {
      throw new IllegalArgumentException(symbol + " cannot be carried into " + other.symbol);
    }
    return other == this ? value : value * factor / other.factor;
  }

  /** The unit with this symbol or common spelling, without regard to case; empty if unknown. */
  public static Optional<Unit> parse(String text) {
    String sought = text.strip().toLowerCase(Locale.ROOT).replace(" / ", "/");
    return Arrays.stream(values())
        .filter(unit -> unit.symbol.equals(sought) || unit.spellings.contains(sought))
        .findFirst();
  }

  @JsonCreator
  public static Unit ofSymbol(String symbol) {
    return parse(symbol)
        .orElseThrow(() -> new IllegalArgumentException("unknown unit '" + symbol + "'"));
  }
}
