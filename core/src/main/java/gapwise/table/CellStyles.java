package gapwise.table;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/**
 * What the styles part says of cells besides how numbers are dates: colours, lines through text,
 * words that a number format adds (ECMA-376 part 1, 18.8).
 */
final class CellStyles extends DefaultHandler {
  private static final Pattern WORDS_OF_FORMAT = Pattern.compile("\"( ?[\\p{L}/ ]+)\"\\s*$");

  private record Style(int fill, int font, int format) {}

  private final List<Optional<String>> fills = new ArrayList<>();
  private final List<Boolean> struckFonts = new ArrayList<>();
  private final Map<Integer, String> formats = new HashMap<>();
  private final List<Style> styles = new ArrayList<>();
  private boolean inFonts;
  private boolean inFills;
  private boolean inStyles;
  private boolean solid;

  @Override
  public void startElement(String uri, String name, String qualified, Attributes attributes) {
    switch (name) {
      case "fonts" -> inFonts = true;
      case "fills" -> inFills = true;
      case "cellXfs" -> inStyles = true;
      case "numFmt" -> formats.put(number(attributes, "numFmtId"), text(attributes, "formatCode"));
      case "font" -> {
        if (inFonts) {
          struckFonts.add(false);
        }
      }
      case "strike" -> {
        if (inFonts && !struckFonts.isEmpty()) {
          String value = attributes.getValue("val");
          struckFonts.set(struckFonts.size() - 1, !"0".equals(value) && !"false".equals(value));
        }
      }
      case "fill" -> fills.add(Optional.empty());
      case "patternFill" ->
          solid =
              !"none".equals(attributes.getValue("patternType"))
                  && !"gray125".equals(attributes.getValue("patternType"));
      case "fgColor" -> colour(attributes);
      case "xf" -> {
        if (inStyles) {
          styles.add(
              new Style(
                  number(attributes, "fillId"),
                  number(attributes, "fontId"),
                  number(attributes, "numFmtId")));
        }
      }
      default -> {}
    }
  }

  @Override
  public void endElement(String uri, String name, String qualified) {
    switch (name) {
      case "fonts" -> inFonts = false;
      case "fills" -> inFills = false;
      case "cellXfs" -> inStyles = false;
      default -> {}
    }
  }

  private void colour(Attributes attributes) {
    if (!inFills || !solid || fills.isEmpty()) {
      return;
    }
    String rgb = attributes.getValue("rgb");
    String theme = attributes.getValue("theme");
    Optional<String> colour = Optional.empty();
    if (rgb != null && rgb.length() >= 6) {
      colour = Optional.of(rgb.substring(rgb.length() - 6).toUpperCase(Locale.ROOT));
    } else if (theme != null && !theme.equals("0")) {
      colour = Optional.of("theme " + theme);
    }
    fills.set(fills.size() - 1, colour.filter(c -> !c.equals("FFFFFF")));
  }

  Optional<String> fill(int style) {
    return style(style)
        .map(Style::fill)
        .filter(f -> f >= 0 && f < fills.size())
        .flatMap(fills::get);
  }

  boolean struck(int style) {
    return style(style)
        .map(Style::font)
        .filter(f -> f >= 0 && f < struckFonts.size())
        .map(struckFonts::get)
        .orElse(false);
  }

  /** Words after a number, such as " cm" of the format {@code 0.0" cm"}; empty for none. */
  String wordsAfter(int style) {
    String code = style(style).map(Style::format).map(formats::get).orElse("");
    Matcher words = WORDS_OF_FORMAT.matcher(code.split(";", -1)[0]);
    return words.find() ? " " + words.group(1).strip() : "";
  }

  private Optional<Style> style(int number) {
    return number >= 0 && number < styles.size()
        ? Optional.of(styles.get(number))
        : Optional.empty();
  }

  private static int number(Attributes attributes, String name) {
    String value = attributes.getValue(name);
    return value == null ? 0 : Integer.parseInt(value);
  }

  private static String text(Attributes attributes, String name) {
    String value = attributes.getValue(name);
    return value == null ? "" : value;
  }
}
