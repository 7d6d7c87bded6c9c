package gapwise.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.problem.Problem;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.crypt.Encryptor;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.xssf.usermodel.XSSFRichTextString;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Workbooks are written by Apache POI's own writer, so writer and reader are of different hands.
 */
class WorkbookReadingTest {
  @TempDir Path folder;

  @Test
  void sheetsComeInTheirOrderAndRowsKeepTheNumbersThePersonSees() throws IOException {
    Taken taken =
        read(
            workbook -> {
              XSSFSheet study = workbook.createSheet("study");
              put(study, 0, "study", "year");
              put(study, 4, "A", 2020);
              workbook.createSheet("empty");
              XSSFSheet arm = workbook.createSheet("arm");
              put(arm, 0, "arm");
              put(arm, 1, "ring");
            });
    assertEquals(List.of("study", "arm"), taken.ended);
    assertEquals(List.of(List.of("A", "2020"), List.of("ring")), taken.texts());
    assertEquals(5, taken.rows.get(0).number());
    assertEquals("sheet study, row 5, column B (year)", taken.rows.get(0).cell("year").where());
    assertTrue(taken.problems.isEmpty());
  }

  @Test
  void numbersHaveNoNoiseOfTheStorage() throws IOException {
    double[] numbers = {
      0.1, 12, 0.1 + 0.2, 1.005, -4.5, 0, 1e-7, 123456789012345.0, 1e300, 2.0 / 3
    };
    Taken taken =
        read(
            workbook -> {
              XSSFSheet sheet = workbook.createSheet("arm");
              put(sheet, 0, "n");
              for (int index = 0; index < numbers.length; index++) {
                put(sheet, index + 1, numbers[index]);
              }
            });
    // 15 significant digits are what a spreadsheet itself shows of 2/3 and of 0.1+0.2.
    assertEquals(
        List.of(
            "0.1",
            "12",
            "0.3",
            "1.005",
            "-4.5",
            "0",
            "0.0000001",
            "123456789012345",
            "1E+300",
            "0.666666666666667"),
        taken.rows.stream().map(row -> row.cell("n").text()).toList());
    assertTrue(taken.rows.stream().allMatch(row -> row.cell("n").stored() == Stored.NUMBER));
  }

  @Test
  void datesAreIsoTextsAndFlagged() throws IOException {
    Taken taken =
        read(
            workbook -> {
              XSSFSheet sheet = workbook.createSheet("arm");
              put(sheet, 0, "range", "moment", "time");
              put(sheet, 1, LocalDate.of(2024, 5, 3), LocalDateTime.of(2024, 5, 3, 14, 30), 0.75);
              format(workbook, sheet, 0, "d\\-mmm");
              format(workbook, sheet, 1, "yyyy-mm-dd hh:mm");
              format(workbook, sheet, 2, "h:mm");
            });
    assertEquals(List.of(List.of("2024-05-03", "2024-05-03T14:30", "18:00")), taken.texts());
    assertTrue(taken.rows.get(0).cells().stream().allMatch(Cell::isDate));
  }

  @Test
  void daysCountedFrom1904AreTheSameDays() throws IOException {
    Taken taken =
        read(
            workbook -> {
              workbook.getCTWorkbook().getWorkbookPr().setDate1904(true);
              XSSFSheet sheet = workbook.createSheet("arm");
              put(sheet, 0, "day");
              put(sheet, 1, LocalDate.of(2024, 5, 3));
              format(workbook, sheet, 0, "yyyy-mm-dd");
            });
    assertEquals("2024-05-03", taken.rows.get(0).cell("day").text());
  }

  @Test
  void percentagesKeepTheirSign() throws IOException {
    Taken taken =
        read(
            workbook -> {
              XSSFSheet sheet = workbook.createSheet("arm");
              put(sheet, 0, "union", "literal");
              put(sheet, 1, 0.855, 0.29);
              format(workbook, sheet, 0, "0.0%");
              format(workbook, sheet, 1, "0.00\"%\"");
            });
    assertEquals(List.of(List.of("85.5%", "0.29")), taken.texts());
  }

  @Test
  void formulasGiveTheirStoredResultAndTruthValuesAreWords() throws IOException {
    Taken taken =
        read(
            workbook -> {
              XSSFSheet sheet = workbook.createSheet("arm");
              put(sheet, 0, "sum", "words", "infected");
              put(sheet, 1, "", "", true);
              sheet.getRow(1).getCell(0).setCellFormula("1+1");
              sheet.getRow(1).getCell(1).setCellFormula("\"a\"&\"b\"");
              workbook.getCreationHelper().createFormulaEvaluator().evaluateAll();
            });
    assertEquals(List.of(List.of("2", "ab", "TRUE")), taken.texts());
    assertEquals(Stored.TRUTH_VALUE, taken.rows.get(0).cell("infected").stored());
  }

  @Test
  void cellErrorsAndFormulasWithoutResultAreProblemsAtTheirCell() throws IOException {
    Taken taken =
        read(
            workbook -> {
              XSSFSheet sheet = workbook.createSheet("arm");
              put(sheet, 0, "a", "b");
              put(sheet, 1, "x", FormulaError.REF);
              put(sheet, 2, "", "y");
              sheet.getRow(2).getCell(0).setCellFormula("1+1");
              sheet.getRow(2).getCell(0).getCTCell().unsetV();
              put(sheet, 3, "fine", "too");
            });
    assertEquals(List.of("cell-error", "formula-without-value"), taken.codes());
    assertEquals("sheet arm, row 2, column B (b)", taken.problems.list().get(0).where());
    assertTrue(taken.problems.list().get(0).message().contains("#REF!"));
    assertEquals("sheet arm, row 3, column A (a)", taken.problems.list().get(1).where());
    assertEquals(List.of(List.of("fine", "too")), taken.texts());
  }

  @Test
  void aRowMayLackCellsAndAMarkedUpTextIsOneText() throws IOException {
    Taken taken =
        read(
            workbook -> {
              XSSFSheet sheet = workbook.createSheet("arm");
              put(sheet, 0, "a", "b", "c", "d");
              XSSFRichTextString marked = new XSSFRichTextString("bold and plain");
              marked.applyFont(0, 4, workbook.createFont());
              sheet.createRow(1).createCell(1).setCellValue(marked);
              sheet.createRow(2).createCell(3).setCellValue("a_x0042_c\r\n\u00FC");
            });
    assertEquals(
        List.of(List.of("", "bold and plain", "", ""), List.of("", "", "", "aBc\r\n\u00FC")),
        taken.texts());
  }

  @Test
  void aHeaderThatIsWrongIsTheOnlyProblemOfItsSheet() throws IOException {
    Taken taken =
        read(
            workbook -> {
              XSSFSheet sheet = workbook.createSheet("arm");
              put(sheet, 0, "a", "a");
              put(sheet, 1, FormulaError.NA, "b");
              XSSFSheet next = workbook.createSheet("study");
              put(next, 0, "a", FormulaError.NAME);
              put(next, 1, "1", "2");
              XSSFSheet last = workbook.createSheet("patient");
              put(last, 0, "a");
              put(last, 1, "1");
            });
    assertEquals(List.of("duplicate-column-name", "cell-error"), taken.codes());
    assertEquals(List.of("patient"), taken.ended);
  }

  @Test
  void aWorkbookIsKnownByItsContentWhateverItsName() throws IOException {
    Taken taken = Taken.from(TableFile.of("upload", bytes(WorkbookReadingTest::small)));
    assertEquals(List.of(List.of("1")), taken.texts());
  }

  @Test
  void aPasswordAnOldFormatAndNoWorkbookAtAllAreToldApart()
      throws IOException, GeneralSecurityException {
    assertEquals("password-protected", codeOf(locked(bytes(WorkbookReadingTest::small))));
    assertEquals("old-workbook", codeOf(old()));
    assertEquals("not-a-workbook", codeOf("study,n\n".getBytes(StandardCharsets.UTF_8)));
    assertEquals("not-a-workbook", codeOf(new byte[0]));
    assertEquals("damaged-workbook", codeOf(zip("readme.txt", "no workbook".getBytes(UTF_8))));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.3, 0.5, 0.7, 0.9, 0.999})
  void aWorkbookCutOffIsAProblem(double kept) throws IOException {
    byte[] whole = bytes(WorkbookReadingTest::small);
    byte[] cut = Arrays.copyOf(whole, (int) (whole.length * kept));
    assertEquals("damaged-workbook", codeOf(cut));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void aWorkbookWithWrongBytesIsReadOrAProblemButNeverAnException(long seed) throws IOException {
    byte[] content = bytes(WorkbookReadingTest::small);
    Random random = new Random(seed);
    for (int change = 0; change < 1 + seed * 5; change++) {
      content[4 + random.nextInt(content.length - 4)] = (byte) random.nextInt(256);
    }
    Taken taken = Taken.from(TableFile.of("book.xlsx", content));
    assertTrue(
        !taken.problems.isEmpty() || taken.texts().equals(List.of(List.of("1"))),
        () -> "neither read nor refused: " + taken.texts());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<row r='1'><c r='A1' t='s'><v>7</v></c></row>",
        "<row r='1'><c r='A1'><v>twelve</v></c></row>",
        "<row r='1'><c r='A1'><v>NaN</v></c></row>",
        "<row r='1'><c r='ZZZZ1'><v>1</v></c></row>",
        "<row r='1'><c r='B1'><v>1</v></c><c r='A1'><v>1</v></c></row>",
        "<row r='2'><c><v>1</v></c></row><row r='1'><c><v>1</v></c></row>",
        "<row r='99999999999'><c r='A1'><v>1</v></c></row>",
        "<row r='1'><c r='A1'><v>1</v></row>"
      })
  void aSheetThatBreaksTheFormatIsDamaged(String rows) throws IOException {
    assertEquals("damaged-workbook", codeOf(bareWorkbook(rows)));
  }

  @Test
  void placesAndInlineTextsAreOptionalInTheFormat() throws IOException {
    // ECMA-376 part 1, 18.3.1.4 and 18.3.1.73: the attribute r of c and of row may be left out.
    Taken taken =
        Taken.from(
            TableFile.of(
                "book.xlsx",
                bareWorkbook(
                    "<row><c t='inlineStr'><is><t>a</t></is></c><c t='str'><v>b</v></c></row>"
                        + "<row><c><v>1</v></c><c t='d'><v>2024-05-03</v></c></row>")));
    assertEquals(List.of(List.of("1", "2024-05-03")), taken.texts());
    assertTrue(taken.rows.get(0).cell("b").isDate());
    assertTrue(taken.problems.isEmpty());
  }

  @Test
  void anEntityBombIsRefused() throws IOException {
    byte[] bomb =
        bareWorkbook(
            "<!DOCTYPE worksheet [<!ENTITY a 'aaaaaaaaaa'><!ENTITY b '&a;&a;&a;&a;'>]>",
            "<row><c t='str'><v>&b;</v></c></row>");
    assertEquals("damaged-workbook", codeOf(bomb));
  }

  @Test
  void aTableOfTextsThatIsPackedLikeABombIsRefused() throws IOException {
    // Sound in itself, so that nothing but its tightness speaks against it.
    byte[] packed = withSharedTexts(100, block -> "<si><t>x</t></si>".repeat(60_000));
    assertTrue(packed.length < 1024 * 1024, "the bomb is small: " + packed.length);
    assertEquals("damaged-workbook", codeOf(packed));
  }

  @Test
  void aTableOfTextsThatWouldFillTheMemoryIsRefused() throws IOException {
    Random random = new Random(1);
    byte[] packed =
        withSharedTexts(
            70,
            block ->
                random
                    .longs(32_000)
                    .mapToObj(text -> "<si><t>%016x</t></si>".formatted(text))
                    .collect(Collectors.joining()));
    Problem problem = Taken.from(TableFile.of("book.xlsx", packed)).onlyProblem();
    assertEquals("workbook-too-large", problem.code());
    assertTrue(problem.message().contains("64 MB"), problem.message());
  }

  /** Pieces that a parser collects whole; random letters, so that no guard of packing speaks. */
  @ParameterizedTest
  @CsvSource({
    "attribute, <row r=', '/>",
    "text, <row><c t='inlineStr'><is><t>, </t></is></c></row>",
    "comment, <!--, -->",
    "comment with marks, <!-- <a> <b>, -->",
    "instruction, <?x <a>, ?>",
    "character data, <row><c><v><![CDATA[<, ]]></v></c></row>"
  })
  void aPieceOfMarkupOfManyMegabytesIsRefusedAtItsRow(String name, String before, String after)
      throws IOException {
    String rows = "<row r='1'><c><v>1</v></c></row>" + before + letters(3_000_000) + after;
    Taken taken = Taken.from(TableFile.of("book.xlsx", bareWorkbook(rows)));
    Problem problem = taken.onlyProblem();
    assertEquals("text-too-long", problem.code(), name);
    assertTrue(problem.where().startsWith("book.xlsx, sheet arm, row "), problem.where());
    assertTrue(problem.message().contains("32,767"), problem.message());
  }

  private static String letters(int count) {
    return new Random(7)
        .ints(count, 'a', 'z' + 1)
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }

  @Test
  void aTextInManyPiecesIsRefusedAtItsCell() throws IOException {
    String runs = ("<r><t>" + letters(10_000) + "</t></r>").repeat(120);
    Taken taken =
        Taken.from(
            TableFile.of(
                "book.xlsx",
                bareWorkbook(
                    "<row><c><v>1</v></c></row><row><c t='inlineStr'><is>"
                        + runs
                        + "</is></c></row>")));
    assertEquals("text-too-long", taken.onlyProblem().code());
    assertEquals("book.xlsx, sheet arm, row 2, column A (1)", taken.onlyProblem().where());
  }

  @Test
  void aSheetThatIsNotUtf8IsRefused() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      bareParts(zip, "", "", StandardCharsets.UTF_16);
    }
    assertEquals("damaged-workbook", codeOf(out.toByteArray()));
  }

  @Test
  void whatTheConsumerThrowsReachesTheCaller() throws IOException {
    IllegalStateException own = new IllegalStateException("own");
    Taken failing =
        new Taken() {
          @Override
          public void begin(Header header) {
            throw own;
          }
        };
    List<TableFile> files = List.of(TableFile.of("b.xlsx", bytes(WorkbookReadingTest::small)));
    assertEquals(
        own,
        assertThrows(
            IllegalStateException.class,
            () -> new TableReader().read(files, failing.problems, failing)));
  }

  @Test
  void aWorkbookOnDiskIsLeftAsItWas() throws IOException {
    Path file = folder.resolve("book.xlsx");
    byte[] content = bytes(WorkbookReadingTest::small);
    Files.write(file, content);
    Taken taken = Taken.from(file);
    assertEquals(1, taken.rows.size());
    assertFalse(taken.rows.get(0).cell("a").isDate());
    assertTrue(Arrays.equals(content, Files.readAllBytes(file)));
  }

  private static final java.nio.charset.Charset UTF_8 = StandardCharsets.UTF_8;

  private static void small(XSSFWorkbook workbook) {
    XSSFSheet sheet = workbook.createSheet("arm");
    put(sheet, 0, "a");
    put(sheet, 1, 1);
  }

  private static Taken read(Consumer<XSSFWorkbook> content) throws IOException {
    return Taken.from(TableFile.of("book.xlsx", bytes(content)));
  }

  private static String codeOf(byte[] content) {
    return Taken.from(TableFile.of("book.xlsx", content)).onlyProblem().code();
  }

  private static byte[] bytes(Consumer<XSSFWorkbook> content) throws IOException {
    try (XSSFWorkbook workbook = new XSSFWorkbook()) {
      content.accept(workbook);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      workbook.write(out);
      return out.toByteArray();
    }
  }

  private static void put(XSSFSheet sheet, int row, Object... values) {
    sheet.createRow(row);
    for (int column = 0; column < values.length; column++) {
      var cell = sheet.getRow(row).createCell(column);
      Object value = values[column];
      if (value instanceof Number number) {
        cell.setCellValue(number.doubleValue());
      } else if (value instanceof LocalDate day) {
        cell.setCellValue(day);
      } else if (value instanceof LocalDateTime moment) {
        cell.setCellValue(moment);
      } else if (value instanceof Boolean truth) {
        cell.setCellValue(truth);
      } else if (value instanceof FormulaError error) {
        cell.setCellErrorValue(error.getCode());
      } else {
        cell.setCellValue(value.toString());
      }
    }
  }

  private static void format(XSSFWorkbook workbook, XSSFSheet sheet, int column, String format) {
    CellStyle style = workbook.createCellStyle();
    style.setDataFormat(workbook.createDataFormat().getFormat(format));
    sheet.getRow(1).getCell(column).setCellStyle(style);
  }

  private static byte[] locked(byte[] workbook) throws IOException, GeneralSecurityException {
    try (POIFSFileSystem container = new POIFSFileSystem()) {
      Encryptor encryptor = new EncryptionInfo(EncryptionMode.agile).getEncryptor();
      encryptor.confirmPassword("secret");
      try (var out = encryptor.getDataStream(container)) {
        out.write(workbook);
      }
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      container.writeFilesystem(out);
      return out.toByteArray();
    }
  }

  private static byte[] old() throws IOException {
    try (HSSFWorkbook workbook = new HSSFWorkbook()) {
      workbook.createSheet("arm");
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      workbook.write(out);
      return out.toByteArray();
    }
  }

  private static byte[] zip(String name, byte[] content) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      entry(zip, name, new String(content, UTF_8));
    }
    return out.toByteArray();
  }

  private static byte[] bareWorkbook(String rows) throws IOException {
    return bareWorkbook("", rows);
  }

  private static byte[] bareWorkbook(String prolog, String rows) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      bareParts(zip, prolog, rows);
    }
    return out.toByteArray();
  }

  private static byte[] withSharedTexts(int blocks, IntFunction<String> block) throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(packed)) {
      bareParts(zip, "", "<row><c t='s'><v>0</v></c></row>");
      zip.putNextEntry(new ZipEntry("xl/sharedStrings.xml"));
      zip.write("<sst>".getBytes(UTF_8));
      for (int number = 0; number < blocks; number++) {
        zip.write(block.apply(number).getBytes(UTF_8));
      }
      zip.write("</sst>".getBytes(UTF_8));
    }
    return packed.toByteArray();
  }

  /** The least that ECMA-376 asks of a workbook, written out by hand. */
  private static void bareParts(ZipOutputStream zip, String prolog, String rows)
      throws IOException {
    bareParts(zip, prolog, rows, UTF_8);
  }

  private static void bareParts(
      ZipOutputStream zip, String prolog, String rows, java.nio.charset.Charset ofSheet)
      throws IOException {
    String main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    String relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    String packaged = "http://schemas.openxmlformats.org/package/2006/";
    String type = "application/vnd.openxmlformats-officedocument.spreadsheetml.";
    entry(
        zip,
        "[Content_Types].xml",
        ("<Types xmlns='%scontent-types'><Default Extension='rels'"
                + " ContentType='application/vnd.openxmlformats-package.relationships+xml'/>"
                + "<Override PartName='/xl/workbook.xml' ContentType='%ssheet.main+xml'/>"
                + "<Override PartName='/xl/sharedStrings.xml' ContentType='%ssharedStrings+xml'/>"
                + "<Override PartName='/xl/sheet1.xml' ContentType='%sworksheet+xml'/></Types>")
            .formatted(packaged, type, type, type));
    entry(
        zip,
        "_rels/.rels",
        "<Relationships xmlns='%srelationships'><Relationship Id='a' Type='%s/officeDocument' Target='xl/workbook.xml'/></Relationships>"
            .formatted(packaged, relations));
    entry(
        zip,
        "xl/_rels/workbook.xml.rels",
        "<Relationships xmlns='%srelationships'><Relationship Id='b' Type='%s/worksheet' Target='sheet1.xml'/></Relationships>"
            .formatted(packaged, relations));
    entry(
        zip,
        "xl/workbook.xml",
        "<workbook xmlns='%s' xmlns:r='%s'><sheets><sheet name='arm' sheetId='1' r:id='b'/></sheets></workbook>"
            .formatted(main, relations));
    String sheet =
        prolog
            + "<worksheet xmlns='%s'><sheetData>".formatted(main)
            + rows
            + "</sheetData></worksheet>";
    zip.putNextEntry(new ZipEntry("xl/sheet1.xml"));
    zip.write(sheet.getBytes(ofSheet));
    zip.closeEntry();
  }

  private static void entry(ZipOutputStream zip, String name, String content) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(content.getBytes(UTF_8));
    zip.closeEntry();
  }
}
