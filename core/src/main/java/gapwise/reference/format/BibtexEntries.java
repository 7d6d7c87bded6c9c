package gapwise.reference.format;

import gapwise.problem.Problem;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Parts BibTeX into entries by counting braces, letter by letter. Where an entry is not closed, the
 * next line that starts as an entry ends it, so that one brace left open costs one entry.
 */
final class BibtexEntries {
  private final TextSource source;
  private final RecordTaker taker;
  private final Map<String, String> macros = new HashMap<>();
  private final List<String> oddities = new ArrayList<>();
  private final Pushed letters;
  private int number;

  BibtexEntries(TextSource source, RecordTaker taker) {
    this.source = source;
    this.taker = taker;
    this.letters = new Pushed(source);
  }

  void read() throws IOException {
    int before = ' ';
    int letter = letters.next();
    while (letter >= 0) {
      if (letter == '@' && !Character.isLetterOrDigit(before) && before != '.') {
        entry();
        before = ' ';
      } else {
        before = letter;
      }
      letter = letters.next();
    }
  }

  private void entry() throws IOException {
    int line = letters.line();
    StringBuilder word = new StringBuilder();
    int letter = letters.next();
    while (letter >= 0 && Character.isLetter(letter) && word.length() < Limits.QUOTED) {
      word.append((char) letter);
      letter = letters.next();
    }
    while (letter >= 0 && Character.isWhitespace(letter)) {
      letter = letters.next();
    }
    if (word.isEmpty() || (letter != '{' && letter != '(')) {
      letters.back(letter);
      return;
    }
    String kind = word.toString().toLowerCase(Locale.ROOT);
    source.takeOddities();
    oddities.clear();
    Body body = body(letter == '(' ? ')' : '}', kind.equals("comment"));
    oddities.addAll(source.takeOddities());
    if (kind.equals("string")) {
      macro(body.text());
    } else if (!kind.equals("comment") && !kind.equals("preamble")) {
      number++;
      hand(kind, line, body);
    } else if (!body.closed()) {
      taker.file(
          new Problem(
              "line " + line,
              "brace-open",
              "The @"
                  + kind
                  + " that starts here is not closed; what follows may have been left out."));
    }
  }

  /** Text of an entry up to its end; of a long value only the beginning is kept. */
  private Body body(char close, boolean nested) throws IOException {
    StringBuilder text = new StringBuilder();
    int depth = 0;
    boolean quoted = false;
    int sinceComma = 0;
    boolean shortened = false;
    int keptOpen = 0;
    while (true) {
      int letter = letters.next();
      if (letter < 0) {
        return new Body(text.toString(), false, shortened);
      }
      if (!nested && letter == '\n' && letters.startsEntry()) {
        return new Body(text.toString(), false, shortened);
      }
      if (letter == '\\') {
        int escaped = letters.next();
        if (sinceComma < Limits.FIELD) {
          text.append('\\');
          if (escaped >= 0) {
            text.append((char) escaped);
          }
        }
        sinceComma += 2;
        continue;
      }
      if (letter == close && depth == 0 && !quoted) {
        return new Body(text.toString(), true, shortened);
      }
      if (letter == '"' && depth == 0) {
        quoted = !quoted;
      } else if (letter == '{') {
        depth++;
      } else if (letter == '}') {
        if (depth == 0) {
          return new Body(text.toString(), close == '}' && !quoted, shortened);
        }
        depth--;
      }
      boolean outside = depth == 0 && !quoted;
      if (sinceComma >= Limits.FIELD && !outside) {
        shortened = true;
        if (letter == '}' && depth < keptOpen) {
          text.append('}');
          keptOpen--;
        }
        continue;
      }
      keptOpen = depth;
      text.append((char) letter);
      sinceComma = outside && letter == ',' ? 0 : sinceComma + 1;
      if (text.length() > Limits.RECORD) {
        return new Body(text.toString(), false, true);
      }
    }
  }

  private void macro(String body) {
    BibtexFields fields = new BibtexFields(body, macros);
    fields.read(false);
    for (RawField field : fields.fields()) {
      macros.put(field.name(), field.value());
    }
  }

  private void hand(String kind, int line, Body body) {
    Gathering record = new Gathering(number, line);
    BibtexFields fields = new BibtexFields(body.text(), macros);
    fields.read(true);
    record.kind(kind);
    fields.key().ifPresent(record::id);
    if (!body.closed()) {
      record.broken(
          line,
          "brace-open",
          "The entry"
              + fields.key().map(key -> " " + Limits.quoted(key)).orElse("")
              + " has a brace or quotation mark that is not closed and stays out; the next entry at"
              + " the start of a line was read. Close the brace.");
    }
    for (RawField field : fields.fields()) {
      record.field(field.name(), field.value(), line + field.line());
    }
    fields
        .doubts()
        .forEach(
            doubt -> record.doubt("", line, "syntax", doubt + " What could be read was read."));
    oddities.forEach(
        oddity ->
            record.doubt(
                "", line, "odd-bytes", "The entry holds " + oddity + ". Look at the field."));
    if (body.shortened()) {
      record.shorten();
    }
    taker.record(record.end());
  }

  /**
   * The text between the brackets of an entry.
   *
   * @param closed whether its end was found
   */
  private record Body(String text, boolean closed, boolean shortened) {}

  /** Letters of a source, of which some can be put back. */
  private static final class Pushed {
    private final TextSource source;
    private final StringBuilder back = new StringBuilder();
    private int line = 1;

    Pushed(TextSource source) {
      this.source = source;
    }

    int line() {
      return line;
    }

    int next() throws IOException {
      int letter;
      if (back.isEmpty()) {
        letter = source.read();
      } else {
        letter = back.charAt(0);
        back.deleteCharAt(0);
      }
      line += letter == '\n' ? 1 : 0;
      return letter;
    }

    void back(int letter) {
      if (letter >= 0) {
        back.insert(0, (char) letter);
        line -= letter == '\n' ? 1 : 0;
      }
    }

    /** Whether what comes now looks like "@article{key," at the start of a line. */
    boolean startsEntry() throws IOException {
      while (back.length() < Limits.QUOTED) {
        int letter = source.read();
        if (letter < 0) {
          break;
        }
        back.append((char) letter);
        if (letter == '\n' || back.charAt(0) != '@') {
          break;
        }
      }
      return Optional.of(back.toString())
          .filter(text -> text.matches("(?s)@[A-Za-z]+\\s*[{(]\\s*[^\\s,{}=\"]*\\s*,.*"))
          .isPresent();
    }
  }
}
