package gapwise.table;

import java.util.ArrayList;
import java.util.List;

/**
 * Records of a text with separators, taken as leniently as people write them: a quotation mark
 * begins a quoted value only where one that ends it can be found, so that a ditto mark stays one.
 */
final class SeparatedText {
  /** Letters of one quoted value; a cell of a spreadsheet holds as many. */
  private static final int LONGEST_QUOTED = 32_767;

  private final String text;
  private final char separator;
  private int at;

  SeparatedText(String text, char separator) {
    this.text = text;
    this.separator = separator;
  }

  List<List<String>> records() {
    List<List<String>> records = new ArrayList<>();
    List<String> record = new ArrayList<>();
    while (at < text.length()) {
      record.add(value());
      if (at >= text.length()) {
        break;
      }
      char end = text.charAt(at++);
      if (end == separator) {
        if (at >= text.length()) {
          record.add("");
        }
        continue;
      }
      if (end == '\r' && at < text.length() && text.charAt(at) == '\n') {
        at++;
      }
      records.add(record);
      record = new ArrayList<>();
    }
    if (!record.isEmpty()) {
      records.add(record);
    }
    return records;
  }

  private String value() {
    if (text.charAt(at) == '"') {
      int end = closing();
      if (end > 0) {
        String quoted = text.substring(at + 1, end).replace("\"\"", "\"");
        at = end + 1;
        return quoted;
      }
    }
    int start = at;
    while (at < text.length() && !ends(text.charAt(at))) {
      at++;
    }
    return text.substring(start, at);
  }

  private boolean ends(char character) {
    return character == separator || character == '\n' || character == '\r';
  }

  /** Where the quotation mark stands that ends the value; 0 where none does. */
  private int closing() {
    // A mark alone between separators is a ditto mark.
    if (at + 1 >= text.length() || ends(text.charAt(at + 1))) {
      return 0;
    }
    int last = Math.min(text.length(), at + LONGEST_QUOTED);
    for (int next = at + 1; next < last; next++) {
      if (text.charAt(next) != '"') {
        continue;
      }
      boolean doubled = next + 1 < text.length() && text.charAt(next + 1) == '"';
      if (doubled) {
        next++;
      } else if (next + 1 >= text.length() || ends(text.charAt(next + 1))) {
        return next;
      } else {
        return 0;
      }
    }
    return 0;
  }
}
