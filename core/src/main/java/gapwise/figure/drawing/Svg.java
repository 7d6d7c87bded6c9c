package gapwise.figure.drawing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/**
 * Writes SVG text: well-formed, escaped, the same bytes for the same calls. Only presentation
 * attributes are used, no style sheet, no script and no identifier, so that several drawings can
 * stand in one page under a strict content security policy.
 */
public final class Svg {
  /** Where a text's x lies on it. */
  public enum Anchor {
    START,
    MIDDLE,
    END
  }

  /**
   * First the typeface that letters are measured in, then those of the same widths. Names with
   * spaces must be quoted, or browsers drop the whole list.
   */
  public static final String TYPEFACES = "'Liberation Sans', Arial, Helvetica, sans-serif";

  private static final double PLAIN_BELOW = 1e9;
  private static final double CLEAR_OF_A_TIE = 0.4999;

  private final StringBuilder out = new StringBuilder(2048);

  /** Begins an element; attributes as name, value, name, value. */
  public Svg open(String name, String... attributes) {
    return tag(name, attributes).append(">\n");
  }

  public Svg close(String name) {
    return append("</" + name + ">\n");
  }

  public Svg empty(String name, String... attributes) {
    return tag(name, attributes).append("/>\n");
  }

  /** An element that holds text only; a text of endless length is shortened. */
  public Svg element(String name, String text, String... attributes) {
    int most = name.equals("title") ? Words.IN_A_NAME : Words.IN_A_TEXT;
    String held = escaped(Words.atMost(text, most));
    return tag(name, attributes).append(">" + held + "</" + name + ">\n");
  }

  /** Begins the drawing with its size, name and description. */
  public Svg begin(double width, double height, String sizeUnit, String role, String title) {
    out.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    double unit = sizeUnit.equals("mm") ? 25.4 / 96 : 1;
    String suffix = sizeUnit.equals("px") ? "" : sizeUnit;
    open(
        "svg",
        "xmlns",
        "http://www.w3.org/2000/svg",
        "viewBox",
        "0 0 " + n(width) + " " + n(height),
        "width",
        n(width * unit) + suffix,
        "height",
        n(height * unit) + suffix,
        "role",
        role,
        "font-family",
        TYPEFACES,
        // Else a browser rounds the width of each letter to pixels, and lines grow beyond their
        // room.
        "text-rendering",
        "geometricPrecision",
        "fill",
        Ink.INK);
    return element("title", title);
  }

  public Svg text(double x, double baseline, Anchor anchor, Lettering lettering, String text) {
    return text(x, baseline, anchor, lettering, text, text);
  }

  /** Text that may be a shortened form; the full words then stand in its title. */
  public Svg text(
      double x, double baseline, Anchor anchor, Lettering lettering, String text, String full) {
    tag("text", "x", n(x), "y", n(baseline), "font-size", n(lettering.size()));
    if (anchor != Anchor.START) {
      attribute("text-anchor", anchor.name().toLowerCase(Locale.ROOT));
    }
    if (lettering.bold()) {
      attribute("font-weight", "700");
    }
    if (!lettering.colour().equals(Ink.INK)) {
      attribute("fill", lettering.colour());
    }
    out.append('>');
    if (!text.equals(full)) {
      String held = escaped(Words.atMost(full, Words.IN_A_NAME));
      out.append("<title>").append(held).append("</title>");
    }
    return append(escaped(text) + "</text>\n");
  }

  public Svg line(double x1, double y1, double x2, double y2, String colour, double width) {
    return empty(
        "line",
        "x1",
        n(x1),
        "y1",
        n(y1),
        "x2",
        n(x2),
        "y2",
        n(y2),
        "stroke",
        colour,
        "stroke-width",
        n(width));
  }

  public Svg dashed(
      double x1, double y1, double x2, double y2, String colour, double width, String dashes) {
    return empty(
        "line",
        "x1",
        n(x1),
        "y1",
        n(y1),
        "x2",
        n(x2),
        "y2",
        n(y2),
        "stroke",
        colour,
        "stroke-width",
        n(width),
        "stroke-dasharray",
        dashes);
  }

  public Svg rect(double x, double y, double width, double height, String fill) {
    return empty(
        "rect", "x", n(x), "y", n(y), "width", n(width), "height", n(height), "fill", fill);
  }

  public Svg path(String path, String fill) {
    return empty("path", "d", path, "fill", fill);
  }

  /** A filled path with an outline, dashed if {@code dashes} is not empty. */
  public Svg shape(String path, String fill, String edge, double width, String dashes) {
    tag("path", "d", path, "fill", fill, "stroke", edge, "stroke-width", n(width));
    if (!dashes.isEmpty()) {
      attribute("stroke-dasharray", dashes);
    }
    return append("/>\n");
  }

  public Svg stroke(String path, String colour, double width) {
    return empty("path", "d", path, "fill", "none", "stroke", colour, "stroke-width", n(width));
  }

  /** A number with at most two decimals, without trailing zeros and without an exponent. */
  public static String n(double value) {
    double hundredths = Math.abs(value) * 100;
    double whole = Math.rint(hundredths);
    if (hundredths < PLAIN_BELOW && Math.abs(hundredths - whole) < CLEAR_OF_A_TIE) {
      return plain(value < 0, (long) whole);
    }
    return exactly(value);
  }

  /** Where the nearest hundredth is beyond doubt: most numbers of a drawing. */
  private static String plain(boolean negative, long hundredths) {
    if (hundredths == 0) {
      return "0";
    }
    long whole = hundredths / 100;
    int rest = (int) (hundredths % 100);
    StringBuilder text = new StringBuilder(12);
    if (negative) {
      text.append('-');
    }
    text.append(whole);
    if (rest > 0) {
      text.append('.').append((char) ('0' + rest / 10));
      if (rest % 10 > 0) {
        text.append((char) ('0' + rest % 10));
      }
    }
    return text.toString();
  }

  private static String exactly(double value) {
    BigDecimal rounded =
        BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }

  /** Points as path data: "x y" pairs for the commands that the caller writes. */
  public static String at(double x, double y) {
    return n(x) + " " + n(y);
  }

  public String end() {
    return close("svg").out.toString();
  }

  private Svg tag(String name, String... attributes) {
    out.append('<').append(name);
    for (int i = 0; i < attributes.length; i += 2) {
      attribute(attributes[i], attributes[i + 1]);
    }
    return this;
  }

  private void attribute(String name, String value) {
    out.append(' ').append(name).append("=\"").append(escaped(value)).append('"');
  }

  private Svg append(String text) {
    out.append(text);
    return this;
  }

  /** Escapes, and puts U+FFFD where XML 1.0 (section 2.2, Char) allows no such character. */
  static String escaped(String text) {
    return isPlain(text) ? text : escapedAnew(text);
  }

  /** Whether nothing in the text needs escaping and no character of it is in question. */
  private static boolean isPlain(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c < ' ' || c == '&' || c == '<' || c == '>' || c == '"' || c >= '\uD800') {
        return false;
      }
    }
    return true;
  }

  private static String escapedAnew(String text) {
    StringBuilder safe = new StringBuilder(text.length() + 16);
    text.codePoints()
        .forEach(
            point -> {
              switch (point) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                default -> safe.appendCodePoint(allowed(point) ? point : 0xFFFD);
              }
            });
    return safe.toString();
  }

  private static boolean allowed(int point) {
    return point == '\t'
        || point == '\n'
        || point == '\r'
        || (point >= 0x20 && point <= 0xD7FF)
        || (point >= 0xE000 && point <= 0xFFFD)
        || point >= 0x10000;
  }
}
