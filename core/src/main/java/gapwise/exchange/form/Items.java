package gapwise.exchange.form;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Several texts in one cell, separated by semicolons. A text that holds a semicolon or a quotation
 * mark stands between quotation marks, as in CSV.
 */
final class Items {
  private Items() {}

  static String join(List<String> items) {
    return items.stream().map(Items::quoted).collect(Collectors.joining("; "));
  }

  static String quoted(String item) {
    boolean plain =
        item.indexOf(';') < 0
            && item.indexOf('"') < 0
            && item.equals(item.strip())
            && !item.isEmpty();
    return plain ? item : '"' + item.replace("\"", "\"\"") + '"';
  }

  /**
   * The items without the spaces around them; empty ones are left out unless quoted.
   *
   * @throws UnreadableException when a quotation mark is left open
   */
  static List<String> split(String text) throws UnreadableException {
    List<String> items = new ArrayList<>();
    StringBuilder item = new StringBuilder();
    boolean quoted = false;
    boolean wasQuoted = false;
    for (int at = 0; at < text.length(); at++) {
      char character = text.charAt(at);
      if (quoted && character == '"' && at + 1 < text.length() && text.charAt(at + 1) == '"') {
        item.append('"');
        at++;
      } else if (character == '"' && (quoted || item.toString().isBlank())) {
        if (!quoted) {
          item.setLength(0);
        }
        quoted = !quoted;
        wasQuoted = true;
      } else if (character == ';' && !quoted) {
        add(items, item, wasQuoted);
        wasQuoted = false;
      } else if (quoted || !wasQuoted || !Character.isWhitespace(character)) {
        item.append(character);
      }
    }
    if (quoted) {
      throw new UnreadableException(
          "wrong-quotation-marks",
          "a quotation mark is not closed. Separate items by semicolons, and put an item that holds"
              + " one between quotation marks.");
    }
    add(items, item, wasQuoted);
    return items;
  }

  private static void add(List<String> items, StringBuilder item, boolean quoted) {
    String text = quoted ? item.toString() : item.toString().strip();
    if (quoted || !text.isEmpty()) {
      items.add(text);
    }
    item.setLength(0);
  }
}
