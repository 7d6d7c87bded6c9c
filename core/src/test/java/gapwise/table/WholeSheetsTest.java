package gapwise.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.problem.Problems;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFColor;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WholeSheetsTest {
  @Test
  void seesWhatAPersonSeesInAWorkbook() throws IOException {
    WholeSheet sheet = read(workbook()).get(0);
    assertEquals("Series", sheet.name());
    assertEquals(List.of(new WholeSheet.Merged(1, 0, 2, 0)), sheet.merged());
    assertEquals(Set.of(2), sheet.hiddenRows());
    assertEquals(Set.of(3), sheet.hiddenColumns());
    WholeCell cell = at(sheet, "B1");
    assertEquals("5.2 cm", cell.text());
    assertEquals(Optional.of("FFC000"), cell.fill());
    assertEquals(Optional.of("or 5.3?"), cell.comment());
    assertTrue(cell.struck());
    assertTrue(at(sheet, "C1").formula());
    assertEquals(Stored.DATE, at(sheet, "D1").stored());
  }

  private static WholeCell at(WholeSheet sheet, String reference) {
    return sheet.cells().stream()
        .filter(cell -> cell.reference().equals(reference))
        .findFirst()
        .orElseThrow();
  }

  private static byte[] workbook() throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
      var sheet = book.createSheet("Series");
      var row = sheet.createRow(0);
      row.createCell(0).setCellValue("Name");
      var cell = row.createCell(1);
      cell.setCellValue(5.2);
      var style = book.createCellStyle();
      style.setFillForegroundColor(new XSSFColor(new byte[] {(byte) 0xFF, (byte) 0xC0, 0}));
      style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
      style.setDataFormat(book.createDataFormat().getFormat("0.0\" cm\""));
      var font = book.createFont();
      font.setStrikeout(true);
      style.setFont(font);
      cell.setCellStyle(style);
      var comment = sheet.createDrawingPatriarch().createCellComment(new XSSFClientAnchor());
      comment.setString("or 5.3?");
      cell.setCellComment(comment);
      row.createCell(2).setCellFormula("1+1");
      book.getCreationHelper().createFormulaEvaluator().evaluateFormulaCell(row.getCell(2));
      CellStyle date = book.createCellStyle();
      date.setDataFormat(book.createDataFormat().getFormat("d-mmm"));
      row.createCell(3).setCellValue(java.time.LocalDate.of(2020, 5, 3));
      row.getCell(3).setCellStyle(date);
      sheet.createRow(1).setZeroHeight(true);
      sheet.addMergedRegion(CellRangeAddress.valueOf("A1:A2"));
      sheet.setColumnHidden(3, true);
      book.write(bytes);
      return bytes.toByteArray();
    }
  }

  private static List<WholeSheet> read(byte[] content) {
    Problems problems = new Problems();
    List<WholeSheet> sheets = WholeSheets.read(TableFile.of("series.dat", content), problems);
    assertTrue(problems.isEmpty(), problems.list().toString());
    return sheets;
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"UTF-8", "windows-1252", "UTF-16LE", "UTF-16BE"})
  void readsTextAsPeopleSaveIt(String charset) {
    String text = "Größe;Länge\r\n7,5 ± 2;\"\r\n8;\"a;b\"\r\n";
    WholeSheet sheet = read(text.getBytes(Charset.forName(charset))).get(0);
    assertEquals(
        List.of("Größe", "Länge", "7,5 ± 2", "\"", "8", "a;b"),
        sheet.cells().stream().map(WholeCell::text).toList());
  }

  @ParameterizedTest
  @ValueSource(strings = {",", ";", "\t", "|"})
  void findsTheSeparator(String separator) {
    String text =
        "Name,Length;x\tz|y\n".substring(0, 0)
            + String.join(separator, "a", "b", "c")
            + "\n"
            + String.join(separator, "1", "2", "3")
            + "\n";
    assertEquals(6, read(text.getBytes(StandardCharsets.UTF_8)).get(0).cells().size());
  }

  @Test
  void takesTheSeparatorThatTheFileNames() {
    WholeSheet sheet = read("sep=;\r\na;b\r\n1,5;2\r\n".getBytes(StandardCharsets.UTF_8)).get(0);
    assertEquals("A2", sheet.cells().get(0).reference());
    assertEquals(4, sheet.cells().size());
  }

  @Test
  void stopsAtMoreCellsThanPeopleWrite() {
    String wide = "x,".repeat(WholeSheets.MOST_COLUMNS + 1) + "\n";
    Problems problems = new Problems();
    WholeSheets.read(TableFile.of("wide.csv", wide.getBytes(StandardCharsets.UTF_8)), problems);
    assertEquals("too-many-cells", problems.list().get(0).code());
  }

  @Test
  void saysOfBytesThatAreNoTable() {
    Problems problems = new Problems();
    WholeSheets.read(
        TableFile.of("x.csv", new byte[] {1, 0, 7, 7, 3, 0, 7, 7, 9, 9, 0, 1}), problems);
    assertEquals("not-a-text", problems.list().get(0).code());
    WholeSheets.read(TableFile.of("x.xlsx", new byte[] {'P', 'K', 3, 4, 9, 9}), problems);
    assertEquals("damaged-workbook", problems.list().get(1).code());
  }
}
