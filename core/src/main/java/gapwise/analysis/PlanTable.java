package gapwise.analysis;

import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** A comma-separated table with a row of column names, in UTF-8 (RFC 4180). */
final class CsvTable {
  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180.builder().setIgnoreEmptyLines(true).setIgnoreSurroundingSpaces(true).get();

  private CsvTable() {}

  /**
   * Reads a table.
   *
   * @param name as the plan gives it, for messages
   * @throws WrongInputException with everything that is wrong with the file
   */
  static DataTable read(Path file, String name) {
    byte[] bytes;
    try {
      bytes = Files.readAllBytes(file);
    } catch (IOException e) {
      throw wrong(
          "file-not-readable",
          "the file '"
              + name
              + "' cannot be read beside the plan; put it there or correct its name");
    }
    String text = decode(bytes, name);
    try (CSVParser parser = CSVParser.parse(text, FORMAT)) {
      return table(parser, name, Hash.sha256(bytes));
    } catch (IOException | UncheckedIOException e) {
      throw wrong("not-a-table", "the file '" + name + "' is no table: " + e.getMessage());
    }
  }

  private static String decode(byte[] bytes, String name) {
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw wrong("not-utf-8", "the file '" + name + "' is not in UTF-8; save it as CSV UTF-8");
    }
  }

  private static DataTable table(CSVParser parser, String name, String sha256) {
    List<String> header = null;
    List<DataTable.Row> rows = new ArrayList<>();
    Problems problems = new Problems();
    for (CSVRecord line : parser) {
      if (header == null) {
        header = header(line, problems);
      } else if (line.size() != header.size()) {
        problems.add(
            name + ", line " + parser.getCurrentLineNumber(),
            "ragged-row",
            "found "
                + line.size()
                + " values, expected "
                + header.size()
                + " as in the row of column names");
      } else {
        Map<String, String> cells = new LinkedHashMap<>();
        for (int i = 0; i < line.size(); i++) {
          if (!line.get(i).isBlank()) {
            cells.put(header.get(i), line.get(i).strip());
          }
        }
        rows.add(new DataTable.Row(rows.size() + 1, cells));
      }
    }
    if (rows.isEmpty() && problems.isEmpty()) {
      problems.add(
          "source.table", "no-rows", "the file '" + name + "' has no row below its column names");
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return new DataTable(new LinkedHashSet<>(header), rows, List.of(), sha256);
  }

  private static List<String> header(CSVRecord line, Problems problems) {
    List<String> names = line.stream().map(String::strip).toList();
    Set<String> seen = new LinkedHashSet<>();
    for (String column : names) {
      if (column.isEmpty()) {
        problems.add("source.table", "unnamed-column", "a column has no name in the first row");
      } else if (!seen.add(column)) {
        problems.add(
            "source.table", "column-twice", "two columns are named '" + column + "'; rename one");
      }
    }
    return names;
  }

  private static WrongInputException wrong(String code, String message) {
    return new WrongInputException(List.of(new Problem("source.table", code, message)));
  }
}
