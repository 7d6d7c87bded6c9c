package gapwise.table;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.List;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Reads one CSV file (RFC 4180): UTF-8 with or without byte order mark, separated by commas or by
 * semicolons, whichever the first line has more of outside quotation marks.
 */
final class CsvTable {
  private final String sheet;
  private final FileReading reading;

  CsvTable(String sheet, FileReading reading) {
    this.sheet = sheet;
    this.reading = reading;
  }

  void read(InputStream bytes) throws IOException {
    long lineBefore = 0;
    try (Utf8Reader text = new Utf8Reader(bytes);
        CSVParser parser = format(text.peekFirstLine()).parse(text)) {
      SheetAssembler assembler = new SheetAssembler(sheet, reading);
      int width = -1;
      Iterator<CSVRecord> records = parser.iterator();
      while (assembler.takesRows() && records.hasNext()) {
        CSVRecord record = records.next();
        text.startRecord();
        long line = lineBefore + 1;
        lineBefore = parser.getCurrentLineNumber();
        List<Value> values = record.stream().map(Value::text).toList();
        if (values.stream().allMatch(Value::isBlank)) {
          continue;
        }
        width = width < 0 ? values.size() : width;
        int number = Math.toIntExact(record.getRecordNumber());
        if (values.size() == width) {
          assembler.row(number, values);
        } else {
          wrongWidth(number, line, values.size(), width);
        }
      }
      if (assembler.isEmpty()) {
        reading.problem(
            "sheet " + sheet,
            "empty-sheet",
            "The file holds no rows. The first row must name the columns.");
      }
      assembler.end();
    } catch (Utf8Reader.NotUtf8 wrong) {
      notUtf8(wrong);
    } catch (UncheckedIOException wrong) {
      if (wrong.getCause() instanceof Utf8Reader.NotUtf8 bytesWrong) {
        notUtf8(bytesWrong);
      } else if (wrong.getCause() instanceof Utf8Reader.TooLong) {
        tooLong(lineBefore + 1);
      } else if (wrong.getCause() instanceof CSVException) {
        wrongQuotes(lineBefore + 1);
      } else {
        throw wrong.getCause();
      }
    } catch (Utf8Reader.TooLong wrong) {
      tooLong(lineBefore + 1);
    }
  }

  private static CSVFormat format(String firstLine) {
    return CSVFormat.RFC4180
        .builder()
        .setDelimiter(separatorIn(firstLine))
        .setIgnoreEmptyLines(false)
        .get();
  }

  private static char separatorIn(String line) {
    int commas = 0;
    int semicolons = 0;
    boolean quoted = false;
    for (int at = 0; at < line.length(); at++) {
      char character = line.charAt(at);
      if (character == '"') {
        quoted = !quoted;
      } else if (!quoted && character == ',') {
        commas++;
      } else if (!quoted && character == ';') {
        semicolons++;
      }
    }
    return semicolons > commas ? ';' : ',';
  }

  private void wrongWidth(int row, long line, int found, int expected) {
    reading.problem(
        Place.row(sheet, row) + " (line " + line + ")",
        found < expected ? "short-row" : "long-row",
        "Found "
            + found
            + (found == 1 ? " value" : " values")
            + ", the header has "
            + expected
            + " columns. Put a value that holds the separator between quotation marks, and leave"
            + " missing values empty but separated.");
  }

  private void notUtf8(Utf8Reader.NotUtf8 wrong) {
    reading.problem(
        "sheet " + sheet + ", line " + wrong.lineNumber(),
        "not-utf-8",
        "The line holds bytes that are not UTF-8 text; nothing from this line on was read. Save the"
            + " file as CSV in UTF-8.");
  }

  private void tooLong(long line) {
    reading.problem(
        "sheet " + sheet + ", line " + line,
        "row-too-long",
        "The row that starts here is longer than "
            + Utf8Reader.LONGEST / (1024 * 1024)
            + " MB; nothing from here on was read. A quotation mark may be left open.");
  }

  private void wrongQuotes(long line) {
    reading.problem(
        "sheet " + sheet + ", line " + line,
        "wrong-quotation-marks",
        "The row that starts here has a quotation mark that is not closed, or text after a closing"
            + " one; nothing from here on was read. Double a quotation mark that belongs to the"
            + " text.");
  }
}
