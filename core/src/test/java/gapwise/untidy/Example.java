package gapwise.untidy;

import gapwise.table.TableFile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * An invented untidy sheet with its truth, out of a text: lines with bars are rows, words before
 * them say what else is in the file, lines after "truth" are what a person reads in it.
 */
record Example(
    String kind,
    String form,
    Map<String, List<List<String>>> sheets,
    List<String> besides,
    List<String> truth) {

  static Example of(String name) {
    try (InputStream in = Example.class.getResourceAsStream(name)) {
      return of(
          new String(Objects.requireNonNull(in, name).readAllBytes(), StandardCharsets.UTF_8)
              .lines()
              .toList());
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static Example of(List<String> lines) {
    Map<String, List<List<String>>> sheets = new LinkedHashMap<>();
    List<String> besides = new ArrayList<>();
    List<String> truth = new ArrayList<>();
    String sheet = "Sheet1";
    boolean inTruth = false;
    for (String line : lines) {
      if (inTruth) {
        truth.add(line);
      } else if (line.startsWith("|")) {
        List<String> row = new ArrayList<>();
        for (String cell : line.substring(1, line.lastIndexOf('|')).split("\\|", -1)) {
          row.add(cell.strip());
        }
        sheets.computeIfAbsent(sheet, any -> new ArrayList<>()).add(row);
      } else if (line.startsWith("sheet ")) {
        sheet = line.substring("sheet ".length());
      } else if (line.equals("truth")) {
        inTruth = true;
      } else {
        besides.add(line);
      }
    }
    return new Example(after(besides, "kind: "), after(besides, "file: "), sheets, besides, truth);
  }

  private static String after(List<String> lines, String word) {
    return lines.stream()
        .filter(line -> line.startsWith(word))
        .findFirst()
        .orElseThrow()
        .substring(word.length());
  }

  TableFile file() {
    return switch (form) {
      case "csv" -> text(",", StandardCharsets.UTF_8);
      case "semicolon" -> text(";", StandardCharsets.UTF_8);
      case "tab" -> text("\t", StandardCharsets.UTF_8);
      case "utf16" -> text("\t", StandardCharsets.UTF_16LE);
      default -> workbook();
    };
  }

  private TableFile text(String separator, Charset charset) {
    StringBuilder out = new StringBuilder();
    for (List<String> row : sheets.values().iterator().next()) {
      out.append(String.join(separator, row.stream().map(cell -> quoted(cell, separator)).toList()))
          .append("\r\n");
    }
    return TableFile.of("sheet.csv", out.toString().getBytes(charset));
  }

  private static String quoted(String cell, String separator) {
    boolean named = cell.startsWith("sep=");
    return !named && (cell.contains(separator) || cell.contains("\""))
        ? "\"" + cell.replace("\"", "\"\"") + "\""
        : cell;
  }

  private TableFile workbook() {
    try (XSSFWorkbook book = new XSSFWorkbook();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
      sheets.forEach((name, rows) -> fill(book.createSheet(name), rows));
      besides.forEach(line -> apply(book, line));
      book.write(bytes);
      return TableFile.of("sheet.xlsx", bytes.toByteArray());
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  private void fill(Sheet sheet, List<List<String>> rows) {
    for (int row = 0; row < rows.size(); row++) {
      for (int column = 0; column < rows.get(row).size(); column++) {
        String text = rows.get(row).get(column);
        if (text.isEmpty()) {
          continue;
        }
        Cell cell =
            (sheet.getRow(row) == null ? sheet.createRow(row) : sheet.getRow(row))
                .createCell(column);
        boolean asText = besides.contains("text " + cell.getAddress().formatAsString());
        if (text.matches("\\d+(\\.\\d+)?") && !asText) {
          cell.setCellValue(Double.parseDouble(text));
        } else {
          cell.setCellValue(text);
        }
      }
    }
  }

  private static void apply(XSSFWorkbook book, String line) {
    String[] words = line.split(" ", 3);
    var sheet = book.getSheetAt(0);
    switch (words[0]) {
      case "merged" -> sheet.addMergedRegion(CellRangeAddress.valueOf(words[1]));
      case "hidden" -> {
        if (words[1].equals("column")) {
          sheet.setColumnHidden(CellReference.convertColStringToIndex(words[2]), true);
        } else {
          sheet.getRow(Integer.parseInt(words[2]) - 1).setZeroHeight(true);
        }
      }
      case "date" -> {
        CellStyle style = book.createCellStyle();
        style.setDataFormat(book.createDataFormat().getFormat("d-mmm"));
        Cell cell = cell(book, words[1]);
        cell.setCellValue(LocalDate.parse(words[2]));
        cell.setCellStyle(style);
      }
      case "comment" -> {
        var comment = sheet.createDrawingPatriarch().createCellComment(new XSSFClientAnchor());
        comment.setString(words[2]);
        cell(book, words[1]).setCellComment(comment);
      }
      default -> {}
    }
  }

  private static Cell cell(XSSFWorkbook book, String address) {
    CellReference place = new CellReference(address);
    return book.getSheetAt(0).getRow(place.getRow()).getCell(place.getCol());
  }
}
