package gapwise.analysis.rows;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * What stands in one cell of a row. A number out of the evidence base or of a plan stays one; the
 * text of a file is read as a number where it looks like one.
 */
public sealed interface RowValue {
  /** The value of a cell in which nothing stands. */
  RowValue BLANK = new Text("");

  /** As it is shown, and compared with levels of a category. */
  String text();

  /** The finite number it is; empty if it is none. */
  OptionalDouble number();

  /** The value that a plan gives: a number as one, anything else as its text. */
  static RowValue of(JsonNode given) {
    return given.isNumber() && Double.isFinite(given.asDouble())
        ? new Number(given.asDouble())
        : new Text(given.asText().strip());
  }

  /**
   * A number.
   *
   * @param value finite
   */
  record Number(double value) implements RowValue {
    public Number {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("not a finite number: " + value);
      }
    }

    /** All its digits, whole numbers without a fraction. */
    @Override
    public String text() {
      return value == Math.rint(value) && Math.abs(value) < Long.MAX_VALUE
          ? Long.toString((long) value)
          : new BigDecimal(Double.toString(value)).toPlainString();
    }

    @Override
    public OptionalDouble number() {
      return OptionalDouble.of(value);
    }
  }

  /**
   * A text as somebody wrote it.
   *
   * @param text without blanks around it
   */
  record Text(String text) implements RowValue {
    /** Plain decimal notation only: Java's own reader also takes "NaN", "0x1p3" and "1d". */
    private static final Pattern NUMBER =
        Pattern.compile("[+-]?(\\d++\\.?\\d*+|\\.\\d++)([eE][+-]?\\d{1,4})?");

    @Override
    public OptionalDouble number() {
      if (!NUMBER.matcher(text).matches()) {
        return OptionalDouble.empty();
      }
      double value = Double.parseDouble(text);
      return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }
  }
}
