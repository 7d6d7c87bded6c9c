package gapwise.reference.format;

import gapwise.problem.Problem;
import java.io.IOException;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Parts MEDLINE text into records: each starts with PMID and ends with an empty line; tags take
 * four places, further lines of a field start with six blanks.
 */
final class MedlineRecords {
  private static final Pattern TAG = Pattern.compile("^([A-Z][A-Z0-9]{1,3}) {0,2}- ?(.*)$");

  /** Tags with which a record starts that has lost its PMID. */
  private static final Set<String> FIRST = Set.of("OWN", "STAT", "DCOM", "DA");

  private final TextSource source;
  private final RecordTaker taker;
  private int number;
  private int stray;
  private boolean blankBefore;
  private boolean lastEnded = true;
  private boolean othersHaveSource;
  private Optional<Gathering> current = Optional.empty();

  MedlineRecords(TextSource source, RecordTaker taker) {
    this.source = source;
    this.taker = taker;
  }

  void read() throws IOException {
    Optional<Line> next = Line.next(source);
    while (next.isPresent()) {
      line(next.get());
      lastEnded = next.get().ended() || next.get().text().isBlank();
      next = Line.next(source);
    }
    current.ifPresent(this::lookAtLast);
    end();
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

  private void lookAtLast(Gathering last) {
    boolean short1 = othersHaveSource && !last.has("SO");
    boolean within = !lastEnded && !last.open().equals("SO");
    if (short1 || within) {
      last.doubt(
          last.open(),
          source.line(),
          "cut-off",
          "The file ends within the record, which may be cut off; compare it with the database.");
      taker.file(
          new Problem(
              "record " + number,
              "cut-off",
              "The last record may be cut off. Export the search again, and compare the number of"
                  + " records with that of the database."));
    }
  }

  private void line(Line line) {
    if (line.text().isBlank()) {
      blankBefore = true;
      return;
    }
    Matcher tag = TAG.matcher(line.text());
    if (!tag.matches()) {
      further(line);
      return;
    }
    String name = tag.group(1);
    start(name, line);
    Gathering record = current.orElseThrow();
    record.field(name, tag.group(2).strip(), line.number());
    record.odd(line);
    blankBefore = false;
  }

  private void start(String name, Line line) {
    boolean begins = false;
    if (current.isEmpty()) {
      begins = true;
    } else if (name.equals("PMID")) {
      begins = blankBefore || current.get().has("TI") || current.get().has("OWN");
    } else if (blankBefore) {
      begins = current.get().has("SO") || (FIRST.contains(name) && current.get().has(name));
      if (!begins) {
        current
            .get()
            .doubt(
                name,
                line.number(),
                "blank-line",
                "An empty line stands inside the record; what comes after it was taken to belong to"
                    + " it.");
      }
    }
    if (begins) {
      end();
      number++;
      current = Optional.of(new Gathering(number, line.number()));
    }
  }

  private void further(Line line) {
    if (current.isEmpty()) {
      stray++;
      return;
    }
    Gathering record = current.get();
    if (!line.text().startsWith("   ")) {
      record.doubt(
          record.open(),
          line.number(),
          "line-without-tag",
          "A line without a tag and without blanks before it, "
              + Limits.quoted(line.text())
              + ", was taken to belong to the field above.");
    } else if (blankBefore) {
      record.doubt(
          record.open(),
          line.number(),
          "blank-line",
          "An empty line stands inside the field; what comes after it was taken to belong to it.");
    }
    record.more(line.text().strip(), " ");
    record.odd(line);
    blankBefore = false;
  }

  private void end() {
    current.ifPresent(
        record -> {
          othersHaveSource |= record.has("SO");
          taker.record(record.end());
        });
    current = Optional.empty();
  }
}
