package gapwise.reference.format;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The key and fields of one entry of BibTeX, from the text between its brackets. */
final class BibtexFields {
  private static final List<String> MONTHS =
      List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");

  private final String text;
  private final Map<String, String> macros;
  private final List<RawField> fields = new ArrayList<>();
  private final List<String> doubts = new ArrayList<>();
  private Optional<String> key = Optional.empty();
  private int at;

  BibtexFields(String text, Map<String, String> macros) {
    this.text = text;
    this.macros = new HashMap<>(macros);
    MONTHS.forEach(month -> this.macros.putIfAbsent(month, month));
  }

  Optional<String> key() {
    return key;
  }

  List<RawField> fields() {
    return List.copyOf(fields);
  }

  List<String> doubts() {
    return List.copyOf(doubts);
  }

  void read(boolean withKey) {
    if (withKey) {
      readKey();
    }
    while (at < text.length()) {
      skip();
      int line = lineAt(at);
      int start = at;
      while (at < text.length() && "=,".indexOf(text.charAt(at)) < 0) {
        at++;
      }
      String name = text.substring(start, at).strip().toLowerCase(Locale.ROOT);
      if (at < text.length() && text.charAt(at) == '=') {
        at++;
        String value = value(name);
        if (name.matches("[^\\s{}\"]+")) {
          fields.add(new RawField(name, value, line));
        } else {
          doubts.add("A comma or a name is missing near " + Limits.quoted(name) + ".");
        }
      } else if (!name.isEmpty()) {
        doubts.add("Found " + Limits.quoted(name) + " where a field with = was expected.");
      }
      at++;
    }
  }

  private void readKey() {
    int comma = text.indexOf(',');
    int equals = text.indexOf('=');
    if (comma >= 0 && (equals < 0 || comma < equals)) {
      key = Optional.of(text.substring(0, comma).strip()).filter(found -> !found.isEmpty());
      at = comma + 1;
    } else if (equals < 0) {
      key = Optional.of(text.strip()).filter(found -> !found.isEmpty());
      at = text.length();
    }
  }

  /** Texts in braces or quotation marks, numbers and macros, joined by #; ends at a comma. */
  private String value(String name) {
    StringBuilder value = new StringBuilder();
    while (at < text.length()) {
      skip();
      if (at >= text.length() || text.charAt(at) == ',') {
        return value.toString();
      }
      char sign = text.charAt(at);
      if (sign == '{') {
        value.append(braced());
      } else if (sign == '"') {
        value.append(quoted());
      } else if (sign == '#') {
        at++;
      } else if (!bare(value, name)) {
        return value.toString();
      }
    }
    return value.toString();
  }

  private boolean bare(StringBuilder value, String name) {
    int start = at;
    while (at < text.length()
        && ",#{}\"".indexOf(text.charAt(at)) < 0
        && !Character.isWhitespace(text.charAt(at))) {
      at++;
    }
    if (at == start) {
      at++;
      return true;
    }
    String word = text.substring(start, at);
    int after = at;
    while (after < text.length() && Character.isWhitespace(text.charAt(after))) {
      after++;
    }
    if (after < text.length() && text.charAt(after) == '=' && !value.isEmpty()) {
      doubts.add("A comma is missing after the field " + name + ".");
      at = start - 1;
      return false;
    }
    if (word.matches("\\d+")) {
      value.append(word);
      return true;
    }
    String known = macros.get(word.toLowerCase(Locale.ROOT));
    if (known == null) {
      doubts.add(
          "The short word "
              + Limits.quoted(word)
              + " of the field "
              + name
              + " is defined nowhere; it was taken as text.");
    }
    value.append(known == null ? word : known);
    return true;
  }

  private String braced() {
    int start = ++at;
    int depth = 1;
    while (at < text.length()) {
      char sign = text.charAt(at);
      if (sign == '\\') {
        at++;
      } else if (sign == '{') {
        depth++;
      } else if (sign == '}' && --depth == 0) {
        return text.substring(start, at++);
      }
      at++;
    }
    doubts.add("A brace is not closed.");
    return text.substring(Math.min(start, text.length()));
  }

  private String quoted() {
    int start = ++at;
    int depth = 0;
    while (at < text.length()) {
      char sign = text.charAt(at);
      if (sign == '\\') {
        at++;
      } else if (sign == '{') {
        depth++;
      } else if (sign == '}') {
        depth--;
      } else if (sign == '"' && depth == 0) {
        return text.substring(start, at++);
      }
      at++;
    }
    doubts.add("A quotation mark is not closed.");
    return text.substring(Math.min(start, text.length()));
  }

  private void skip() {
    while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
      at++;
    }
  }

  private int lineAt(int place) {
    return (int)
        text.substring(0, Math.min(place, text.length()))
            .chars()
            .filter(sign -> sign == '\n')
            .count();
  }
}
