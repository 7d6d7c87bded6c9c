package gapwise.reference.format;

import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Collects the fields of one record while its lines are read. Not thread-safe. */
final class Gathering {
  private final int number;
  private final int line;
  private final List<RawField> fields = new ArrayList<>();
  private final List<Problem> doubts = new ArrayList<>();
  private Optional<String> id = Optional.empty();
  private Optional<String> kind = Optional.empty();
  private Optional<Problem> broken = Optional.empty();
  private StringBuilder value = new StringBuilder();
  private String open = "";
  private int openLine;
  private long size;
  private boolean shortened;

  Gathering(int number, int line) {
    this.number = number;
    this.line = line;
  }

  int line() {
    return line;
  }

  boolean isEmpty() {
    return fields.isEmpty() && open.isEmpty();
  }

  /** Name of the field that further lines belong to; empty before the first one. */
  String open() {
    return open;
  }

  boolean has(String name) {
    return open.equals(name) || fields.stream().anyMatch(field -> field.name().equals(name));
  }

  void id(String text) {
    id = Optional.of(text);
  }

  void kind(String text) {
    kind = Optional.of(text);
  }

  /** Starts a field. */
  void field(String name, String text, int atLine) {
    close();
    open = name;
    openLine = atLine;
    append(text, "");
  }

  /** Adds a further line to the field that is open. */
  void more(String text, String between) {
    append(text, value.isEmpty() ? "" : between);
  }

  private void append(String text, String between) {
    if (value.length() + text.length() > Limits.FIELD || size + text.length() > Limits.RECORD) {
      shorten();
      int room = (int) Math.max(0, Math.min(Limits.FIELD - value.length(), Limits.RECORD - size));
      value.append(text, 0, Math.min(text.length(), room));
    } else {
      value.append(between).append(text);
      size += text.length();
    }
  }

  /** Notes once for each field that not all of it was kept. */
  void shorten() {
    if (!shortened) {
      shortened = true;
      doubt(
          open,
          openLine,
          "too-long",
          String.format(
              java.util.Locale.ROOT,
              "the text is longer than %,d letters; what is beyond was left out. Look whether the"
                  + " field ends where it should.",
              Limits.FIELD));
    }
  }

  void doubt(String field, int atLine, String code, String message) {
    if (doubts.size() < Limits.QUOTED) {
      doubts.add(new Problem(place(number, atLine, field), code, message));
    }
  }

  /** Odd bytes of a line, told of the field that is open. */
  void odd(Line at) {
    for (String oddity : at.oddities()) {
      doubt(open, at.number(), "odd-bytes", "The text holds " + oddity + ". Look at the field.");
    }
    if (at.dropped() > 0) {
      shorten();
    }
  }

  /** The record cannot be read. */
  void broken(int atLine, String code, String message) {
    broken = Optional.of(new Problem(place(number, atLine, ""), code, message));
  }

  private void close() {
    if (!open.isEmpty()) {
      if (fields.size() < Limits.FIELDS) {
        fields.add(new RawField(open, value.toString().strip(), openLine));
      } else if (fields.size() == Limits.FIELDS) {
        doubt(
            open,
            openLine,
            "too-many-fields",
            "The record has more fields than are read; what comes after was left out.");
      }
    }
    open = "";
    shortened = false;
    value = new StringBuilder();
  }

  RawRecord end() {
    close();
    return new RawRecord(number, line, id, kind, fields, doubts, broken);
  }

  /** A place in words. */
  static String place(int number, int line, String field) {
    return "record " + number + ", line " + line + (field.isEmpty() ? "" : ", field " + field);
  }
}
