package gapwise.reference.format;

import gapwise.problem.Problem;
import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Parts RIS into records: each starts with TY and ends with ER, each field with a tag of two signs.
 */
final class RisRecords {
  private static final Pattern TAG = Pattern.compile("^([A-Z][A-Z0-9])  ?-(?: (.*)|\\s*)$");

  /** Tags as they should not be written: small letters, other blanks, blanks before them. */
  private static final Pattern LOOSE_TAG =
      Pattern.compile("^\\s*([A-Za-z][A-Za-z0-9])\\s{0,4}[-\\u2013](?:\\s+(.*)|\\s*)$");

  /** Fields whose text is often broken into lines. */
  private static final Set<String> LONG = Set.of("AB", "N1", "N2", "KW", "RN", "AD");

  /** Tags that are believed although they are written loosely. */
  private static final Set<String> KNOWN =
      Set.of(
          "TY", "ER", "ID", "AU", "A1", "A2", "A3", "A4", "TI", "T1", "T2", "T3", "JO", "JF", "JA",
          "J1", "J2", "PY", "Y1", "Y2", "DA", "VL", "IS", "SP", "EP", "DO", "AN", "AB", "N1", "N2",
          "KW", "LA", "SN", "UR", "M1", "M2", "M3", "PB", "CY", "DB", "DP", "ED", "BT", "CT", "C1",
          "C2", "C3", "C4", "C5", "C6", "C7", "C8", "L1", "L2", "L3", "L4", "U1", "U2", "AD", "ST",
          "TT", "TA", "ET", "RN", "CN", "LB", "OP", "RI", "RP", "SE", "VO");

  private final TextSource source;
  private final RecordTaker taker;
  private int number;
  private int stray;
  private boolean looseTold;
  private Optional<Gathering> current = Optional.empty();

  RisRecords(TextSource source, RecordTaker taker) {
    this.source = source;
    this.taker = taker;
  }

  void read() throws IOException {
    Optional<Line> next = Line.next(source);
    while (next.isPresent()) {
      line(next.get());
      next = Line.next(source);
    }
    if (current.isPresent()) {
      Gathering last = current.get();
      last.doubt(
          last.open(),
          source.line(),
          "no-end",
          "The record has no ER; it is the last of the file and may be cut off.");
      taker.file(
          new Problem(
              "record " + number,
              "no-end",
              "The last record has no ER; the file may be cut off. Compare the number of records"
                  + " with that of the database."));
      end();
    }
    if (stray > 0) {
      taker.file(
          new Problem(
              "",
              "stray-lines",
              stray
                  + (stray == 1 ? " line stands" : " lines stand")
                  + " outside of records and were left out."));
    }
  }

  private void line(Line line) {
    Matcher tag = TAG.matcher(line.text());
    boolean strict = tag.matches();
    if (!strict) {
      tag = LOOSE_TAG.matcher(line.text());
    }
    String name = tag.matches() ? tag.group(1).toUpperCase(Locale.ROOT) : "";
    boolean loose = !strict && KNOWN.contains(name) && (current.isPresent() || name.equals("TY"));
    if (!strict && (!loose || isProse(tag.group(1), line.text()))) {
      further(line);
      return;
    }
    String value = Optional.ofNullable(tag.group(2)).orElse("").strip();
    if (name.equals("ER")) {
      if (current.isPresent() && !value.isEmpty()) {
        further(line);
      }
      end();
      return;
    }
    start(name, line);
    Gathering record = current.orElseThrow();
    record.field(name, value, line.number());
    if (!strict && !looseTold) {
      looseTold = true;
      record.doubt(
          name,
          line.number(),
          "loose-tag",
          "The tag is written as "
              + Limits.quoted(tag.group(1))
              + ", not as \""
              + name
              + "  - \"; lines like it were read all the same.");
    }
    record.odd(line);
  }

  /** Within a text two small letters and a dash may be words, as in "so - they said". */
  private boolean isProse(String tag, String text) {
    boolean small = tag.equals(tag.toLowerCase(Locale.ROOT));
    boolean tagged = text.matches("^[A-Za-z][A-Za-z0-9]  - ?.*");
    return (small && !tagged)
        || (!tagged && current.map(record -> LONG.contains(record.open())).orElse(false));
  }

  private void start(String name, Line line) {
    if (name.equals("TY") && current.isPresent() && !current.get().isEmpty()) {
      Gathering open = current.get();
      if (open.has("TY") || open.has("TI") || open.has("T1")) {
        open.doubt(
            "",
            line.number(),
            "no-end",
            "The record has no ER; it was ended where the next TY stands. Look whether two records"
                + " became one.");
        end();
      }
    }
    if (current.isEmpty()) {
      number++;
      looseTold = false;
      Gathering record = new Gathering(number, line.number());
      current = Optional.of(record);
      if (!name.equals("TY")) {
        record.doubt(
            "TY",
            line.number(),
            "no-kind",
            "TY is missing; the record was taken to start after the last ER. Give the kind of"
                + " publication.");
      }
    }
  }

  private void further(Line line) {
    if (line.text().isBlank()) {
      return;
    }
    if (current.isEmpty() || current.get().open().isEmpty()) {
      stray++;
      return;
    }
    Gathering record = current.get();
    boolean keywords = record.open().equals("KW");
    if (keywords) {
      record.field("KW", line.text().strip(), line.number());
    } else {
      record.more(line.text().strip(), " ");
    }
    if (!LONG.contains(record.open()) && !line.text().startsWith("  ")) {
      record.doubt(
          record.open(),
          line.number(),
          "line-without-tag",
          "A line without a tag, "
              + Limits.quoted(line.text())
              + ", was taken to belong to the field above.");
    }
    record.odd(line);
  }

  private void end() {
    current.ifPresent(record -> taker.record(record.end()));
    current = Optional.empty();
  }
}
