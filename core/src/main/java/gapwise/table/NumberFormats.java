package gapwise.table;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.apache.poi.ss.usermodel.BuiltinFormats;
import org.apache.poi.ss.usermodel.DateUtil;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/**
 * Which cell styles show a number as a date or as a percentage, read from the styles part, and the
 * text of a number under a style.
 */
final class NumberFormats extends DefaultHandler {
  /** Spreadsheets compute with 15 significant digits; further ones are noise of the storage. */
  private static final MathContext SPREADSHEET_DIGITS = new MathContext(15);

  /** Beyond so many places a number is written with an exponent. */
  private static final int MOST_PLACES = 20;

  private static final Pattern LITERAL = Pattern.compile("\"[^\"]*\"|\\\\.");

  private final boolean startsIn1904;
  private final Map<Integer, String> ownFormats = new HashMap<>();
  private final List<Integer> formatOfStyle = new ArrayList<>();
  private final Map<Integer, Shape> shapes = new HashMap<>();
  private boolean inCellStyles;

  private enum Shape {
    PLAIN,
    PERCENTAGE,
    DATE
  }

  NumberFormats(boolean startsIn1904) {
    this.startsIn1904 = startsIn1904;
  }

  @Override
  public void startElement(String uri, String name, String qualified, Attributes attributes) {
    if (name.equals("numFmt")) {
      ownFormats.put(number(attributes.getValue("numFmtId")), attributes.getValue("formatCode"));
    } else if (name.equals("cellXfs")) {
      inCellStyles = true;
    } else if (inCellStyles && name.equals("xf")) {
      formatOfStyle.add(number(attributes.getValue("numFmtId")));
    }
  }

  @Override
  public void endElement(String uri, String name, String qualified) {
    if (name.equals("cellXfs")) {
      inCellStyles = false;
    }
  }

  /**
   * The value of a numeric cell.
   *
   * @param raw the number as the file keeps it
   * @param style the cell's style number, 0 when it has none
   * @throws IllegalArgumentException when raw is no finite number
   */
  Value value(String raw, int style) {
    double number = Double.parseDouble(raw);
    if (!Double.isFinite(number)) {
      throw new IllegalArgumentException("not a finite number: " + raw);
    }
    return switch (shapes.computeIfAbsent(style, this::shapeOf)) {
      case DATE -> new Value(date(number), Stored.DATE);
      case PERCENTAGE ->
          new Value(plain(BigDecimal.valueOf(number).movePointRight(2)) + "%", Stored.NUMBER);
      case PLAIN -> new Value(plain(BigDecimal.valueOf(number)), Stored.NUMBER);
    };
  }

  private String date(double days) {
    LocalDateTime moment = DateUtil.getLocalDateTime(days, startsIn1904, true);
    if (moment == null) {
      return plain(BigDecimal.valueOf(days));
    }
    if (days < 1) {
      return moment.toLocalTime().toString();
    }
    return moment.toLocalTime().equals(LocalTime.MIDNIGHT)
        ? moment.toLocalDate().toString()
        : moment.toString();
  }

  private static String plain(BigDecimal number) {
    BigDecimal rounded = number.round(SPREADSHEET_DIGITS).stripTrailingZeros();
    if (rounded.signum() == 0) {
      return "0";
    }
    int exponent = rounded.precision() - rounded.scale();
    return Math.abs(exponent) > MOST_PLACES ? rounded.toString() : rounded.toPlainString();
  }

  private Shape shapeOf(int style) {
    int format = style >= 0 && style < formatOfStyle.size() ? formatOfStyle.get(style) : 0;
    String code = ownFormats.getOrDefault(format, BuiltinFormats.getBuiltinFormat(format));
    if (code == null) {
      return Shape.PLAIN;
    }
    if (DateUtil.isADateFormat(format, code)) {
      return Shape.DATE;
    }
    boolean percentage = LITERAL.matcher(code).replaceAll("").contains("%");
    return percentage ? Shape.PERCENTAGE : Shape.PLAIN;
  }

  private static int number(String attribute) {
    return attribute == null ? 0 : Integer.parseInt(attribute);
  }
}
