package gapwise.table;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Reads a text file with separators as people and programs save them: UTF-8, UTF-16 or
 * Windows-1252, separated by commas, semicolons, tabs or bars, with rows of any length.
 */
final class WholeText {
  /** Largest file; it is held in memory. Our choice: 2,000 patients of 50 columns have 1 MB. */
  private static final int MOST_BYTES = 16 * 1024 * 1024;

  private static final char[] SEPARATORS = {',', ';', '\t', '|'};

  /** How many lines tell the separator. */
  private static final int LINES_LOOKED_AT = 50;

  private static final String NAMED = "sep=";

  private WholeText() {}

  static Optional<WholeSheet> read(TableFile file, FileReading reading) throws IOException {
    byte[] bytes;
    try (InputStream in = file.opening().open()) {
      bytes = in.readNBytes(MOST_BYTES + 1);
    }
    if (bytes.length > MOST_BYTES) {
      reading.problem(
          file.name(),
          "file-too-large",
          "The file is larger than " + MOST_BYTES / (1024 * 1024) + " MB. Split it.");
      return Optional.empty();
    }
    String text = decoded(bytes);
    if (text.indexOf('\0') >= 0) {
      reading.problem(
          file.name(),
          "not-a-text",
          "The file is neither a workbook (.xlsx) nor a text with separators. Save the table as one"
              + " of these.");
      return Optional.empty();
    }
    List<List<String>> records = new SeparatedText(text, separator(text)).records();
    List<WholeCell> cells = new ArrayList<>();
    for (int row = 0; row < records.size(); row++) {
      List<String> record = records.get(row);
      boolean names = row == 0 && String.join("", record).startsWith(NAMED);
      for (int column = 0; column < record.size() && !names; column++) {
        if (Blank.is(record.get(column))) {
          continue;
        }
        if (cells.size() == WholeSheets.MOST_CELLS || column >= WholeSheets.MOST_COLUMNS) {
          reading.problem(
              file.name(),
              "too-many-cells",
              "The file holds more than "
                  + WholeSheets.MOST_CELLS
                  + " values or "
                  + WholeSheets.MOST_COLUMNS
                  + " columns; nothing from row "
                  + (row + 1)
                  + " on was read. Split it.");
          return Optional.of(sheet(file, cells));
        }
        cells.add(cell(row + 1, column, Blank.strip(record.get(column))));
      }
    }
    return Optional.of(sheet(file, cells));
  }

  private static WholeSheet sheet(TableFile file, List<WholeCell> cells) {
    String name = file.sheet();
    int end = name.lastIndexOf('.');
    return new WholeSheet(
        end > 0 ? name.substring(0, end) : name, false, cells, List.of(), Set.of(), Set.of());
  }

  private static WholeCell cell(int row, int column, String text) {
    return new WholeCell(
        row, column, text, Stored.TEXT, false, Optional.empty(), Optional.empty(), false);
  }

  private static String decoded(byte[] bytes) {
    if (startsWith(bytes, 0xFF, 0xFE) || looksLikeSixteenBits(bytes, 1)) {
      return unmarked(new String(bytes, StandardCharsets.UTF_16LE));
    }
    if (startsWith(bytes, 0xFE, 0xFF) || looksLikeSixteenBits(bytes, 0)) {
      return unmarked(new String(bytes, StandardCharsets.UTF_16BE));
    }
    try {
      return unmarked(
          StandardCharsets.UTF_8
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .decode(ByteBuffer.wrap(bytes))
              .toString());
    } catch (CharacterCodingException old) {
      return new String(bytes, Charset.forName("windows-1252"));
    }
  }

  private static boolean startsWith(byte[] bytes, int first, int second) {
    return bytes.length > 1 && (bytes[0] & 0xFF) == first && (bytes[1] & 0xFF) == second;
  }

  /** Text of small letters in two bytes each has a zero in every second place. */
  private static boolean looksLikeSixteenBits(byte[] bytes, int zeros) {
    int looked = Math.min(bytes.length, 200) / 2;
    int found = 0;
    for (int at = 0; at < looked; at++) {
      found += bytes[2 * at + zeros] == 0 ? 1 : 0;
    }
    return looked > 4 && found > looked * 3 / 4;
  }

  private static String unmarked(String text) {
    return text.startsWith("\uFEFF") ? text.substring(1) : text;
  }

  /** The separator that the file names, or the one that stands in most lines equally often. */
  private static char separator(String text) {
    if (text.startsWith(NAMED) && text.length() > NAMED.length()) {
      return text.charAt(NAMED.length());
    }
    char best = ',';
    double most = 0;
    for (char candidate : SEPARATORS) {
      double score = score(text, candidate);
      if (score > most) {
        most = score;
        best = candidate;
      }
    }
    return best;
  }

  /**
   * How many lines share the commonest width above one, and a little more for wider ones: a comma
   * inside numbers makes widths that differ from line to line.
   */
  private static double score(String text, char separator) {
    List<List<String>> records = new SeparatedText(text, separator).records();
    int[] widths = new int[64];
    int lines = Math.min(records.size(), LINES_LOOKED_AT);
    for (List<String> record : records.subList(0, lines)) {
      widths[Math.min(record.size(), widths.length - 1)]++;
    }
    double best = 0;
    for (int width = 2; width < widths.length; width++) {
      best = Math.max(best, widths[width] * (1 + width / 100.0));
    }
    return best;
  }
}
