package gapwise.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.problem.Problems;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Reads large files in a process that has far less memory than they have content. */
class LargeWorkbookTest {
  private static final int ROWS = 100_000;
  private static final int COLUMNS = 12;
  private static final String MEMORY = "-Xmx64m";

  @TempDir Path folder;

  @Test
  void aHundredThousandRowsOfAWorkbookAreReadInLittleMemory() throws Exception {
    Path file = folder.resolve("large.xlsx");
    try (SXSSFWorkbook workbook = new SXSSFWorkbook(100);
        OutputStream out = Files.newOutputStream(file)) {
      SXSSFSheet sheet = workbook.createSheet("patient");
      for (int number = 0; number <= ROWS; number++) {
        Row row = sheet.createRow(number);
        for (int column = 0; column < COLUMNS; column++) {
          if (number == 0 || column % 2 == 0) {
            row.createCell(column).setCellValue("text " + column + " " + number % 977);
          } else {
            row.createCell(column).setCellValue(number / 10.0);
          }
        }
      }
      workbook.write(out);
    }
    assertEquals(ROWS + " rows, 0 problems", readInAnotherProcess(file));
  }

  @Test
  void rowsThatAreAllAlikeAreNotTakenForABomb() throws Exception {
    Path file = folder.resolve("alike.xlsx");
    try (SXSSFWorkbook workbook = new SXSSFWorkbook(100);
        OutputStream out = Files.newOutputStream(file)) {
      SXSSFSheet sheet = workbook.createSheet("patient");
      for (int number = 0; number <= 20_000; number++) {
        Row row = sheet.createRow(number);
        for (int column = 0; column < COLUMNS; column++) {
          row.createCell(column).setCellValue("c" + column);
        }
      }
      workbook.write(out);
    }
    assertEquals("20000 rows, 0 problems", readInAnotherProcess(file));
  }

  @Test
  void aMillionRowsOfCsvAreReadInLittleMemory() throws Exception {
    Path file = folder.resolve("patient.csv");
    String header =
        IntStream.range(0, COLUMNS).mapToObj(c -> "c" + c).collect(Collectors.joining(","));
    String block = ("\"a text, quoted\"" + ",12.5".repeat(COLUMNS - 1) + "\n").repeat(1000);
    try (OutputStream out = Files.newOutputStream(file)) {
      out.write((header + "\n").getBytes(StandardCharsets.UTF_8));
      for (int times = 0; times < 1000; times++) {
        out.write(block.getBytes(StandardCharsets.UTF_8));
      }
    }
    assertEquals("1000000 rows, 0 problems", readInAnotherProcess(file));
  }

  private static String readInAnotherProcess(Path file) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(
                List.of(
                    ProcessHandle.current().info().command().orElse("java"),
                    MEMORY,
                    "-cp",
                    System.getProperty("java.class.path"),
                    Counting.class.getName(),
                    file.toString()))
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, process.waitFor(), said);
    return said.strip();
  }

  /** Reads one file and says what it found. */
  static final class Counting implements SheetConsumer {
    private long rows;

    public static void main(String[] arguments) {
      Counting counting = new Counting();
      Problems problems = new Problems();
      new TableReader().read(Path.of(arguments[0]), problems, counting);
      System.out.println(counting.rows + " rows, " + problems.list().size() + " problems");
      problems.list().stream().limit(3).forEach(problem -> System.out.println(problem.line()));
    }

    @Override
    public void begin(Header header) {
      rows = 0;
    }

    @Override
    public void row(gapwise.table.Row row) {
      rows += row.cells().size() / COLUMNS;
    }
  }
}
