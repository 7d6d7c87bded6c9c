package gapwise.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.problem.Problem;
import gapwise.problem.Problems;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Expected readings follow RFC 4180 (Shafranovich, 2005), section 2, by rule number where given.
 */
class CsvReadingTest {
  @TempDir Path folder;

  @Test
  void everyCellKnowsItsPlace() {
    Taken taken = Taken.fromCsv("study,defect_length\r\nA 2020,4.5\r\nB 2021,\r\n");
    Cell cell = taken.rows.get(0).cell("defect_length");
    assertEquals("4.5", cell.text());
    assertEquals("sheet arm, row 2, column B (defect_length)", cell.where());
    assertEquals(2, cell.row());
    assertFalse(cell.isBlank());
    assertTrue(taken.rows.get(1).cell("defect_length").isBlank());
    assertEquals(Optional.empty(), taken.rows.get(1).text("defect_length"));
    assertEquals(Optional.empty(), taken.rows.get(0).find("no_such"));
    assertEquals(List.of("arm"), taken.ended);
    assertTrue(taken.problems.isEmpty());
  }

  @Test
  void askingForAColumnThatIsNotThereNamesThoseThatAre() {
    Row row = Taken.fromCsv("study,arm\nA,1\n").rows.get(0);
    IllegalArgumentException thrown =
        assertThrows(IllegalArgumentException.class, () -> row.cell("method"));
    assertTrue(thrown.getMessage().contains("[study, arm]"), thrown.getMessage());
    assertEquals("1", row.cell(new Column("arm", 1)).text());
    assertThrows(IllegalArgumentException.class, () -> row.cell(new Column("arm", 0)));
    assertThrows(IllegalArgumentException.class, () -> row.cell(new Column("arm", 2)));
  }

  @Test
  void quotedValuesMayHoldSeparatorsLineEndsAndDoubledQuotationMarks() {
    // Rules 5, 6 and 7 of RFC 4180.
    Taken taken = Taken.fromCsv("\"a\",\"b\",c\r\n\"1,5\",\"two\r\nlines\",\"a \"\"word\"\"\"\r\n");
    assertEquals(List.of(List.of("1,5", "two\r\nlines", "a \"word\"")), taken.texts());
  }

  @Test
  void theLastLineMayLackItsEnd() {
    // Rule 2 of RFC 4180.
    assertEquals(List.of(List.of("1", "2")), Taken.fromCsv("a,b\r\n1,2").texts());
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\r"})
  void anyLineEndIsUnderstood(String end) {
    Taken taken = Taken.fromCsv("a,b" + end + "1,2" + end + "3,4" + end);
    assertEquals(List.of(List.of("1", "2"), List.of("3", "4")), taken.texts());
  }

  @Test
  void aByteOrderMarkIsNoPartOfTheFirstName() {
    Taken taken = Taken.fromCsv("\uFEFF\"study\",n\nA,1\n");
    assertEquals(List.of("study", "n"), taken.headers.get(0).names());
  }

  @Test
  void semicolonsSeparateWhenTheHeaderHasMoreOfThem() {
    Taken taken = Taken.fromCsv("study;\"a,b,c\";n\nA;1,5;2\n");
    assertEquals(List.of("study", "a,b,c", "n"), taken.headers.get(0).names());
    assertEquals(List.of(List.of("A", "1,5", "2")), taken.texts());
  }

  @Test
  void shortAndLongRowsAreProblemsByLineAndTheOthersAreRead() {
    Taken taken = Taken.fromCsv("a,b\n\"1\n1\",2\n3\n4,5,6\n7,8\n");
    assertEquals(List.of("short-row", "long-row"), taken.codes());
    assertEquals("sheet arm, row 3 (line 4)", taken.problems.list().get(0).where());
    assertEquals("sheet arm, row 4 (line 5)", taken.problems.list().get(1).where());
    assertTrue(
        taken.problems.list().get(1).message().startsWith("Found 3 values, the header has 2"));
    assertEquals(List.of(List.of("1\n1", "2"), List.of("7", "8")), taken.texts());
    assertEquals(5, taken.rows.get(1).number());
  }

  @Test
  void blankRowsAreCountedButNotPassedOn() {
    Taken taken = Taken.fromCsv("\na,b\n\n,\n \u00A0,\n1,2\n");
    assertEquals(2, taken.headers.get(0).row());
    assertEquals(6, taken.rows.get(0).number());
    assertEquals(1, taken.rows.size());
    assertTrue(taken.problems.isEmpty());
  }

  @Test
  void duplicateAndBlankColumnNamesAreProblemsAndTheSheetIsNotBegun() {
    Taken taken = Taken.fromCsv("n,,n ,x\n1,2,3,4\n");
    assertEquals(List.of("blank-column-name", "duplicate-column-name"), taken.codes());
    assertEquals("sheet arm, row 1, column B", taken.problems.list().get(0).where());
    assertEquals("sheet arm, row 1, column C", taken.problems.list().get(1).where());
    assertTrue(taken.headers.isEmpty());
    assertTrue(taken.rows.isEmpty());
    assertTrue(taken.ended.isEmpty());
  }

  @Test
  void emptyColumnsAtTheRightAreNoColumnsUnlessAValueStandsThere() {
    Taken taken = Taken.fromCsv("a,b,,\n1,2,,\n3,4,,5\n");
    assertEquals(List.of("a", "b"), taken.headers.get(0).names());
    assertEquals(List.of(List.of("1", "2")), taken.texts());
    assertEquals("value-without-column", taken.onlyProblem().code());
    assertEquals("sheet arm, row 3, column D", taken.onlyProblem().where());
  }

  @Test
  void bytesThatAreNotUtf8AreAProblemByLine() {
    byte[] latin = "study,n\nA,1\nM\u00FCller,2\n".getBytes(StandardCharsets.ISO_8859_1);
    Taken taken = Taken.from(TableFile.of("arm.csv", latin));
    assertEquals("not-utf-8", taken.onlyProblem().code());
    assertEquals("sheet arm, line 3", taken.onlyProblem().where());
    assertEquals(List.of(List.of("A", "1")), taken.texts());
  }

  @Test
  void aHeaderThatIsNotUtf8IsAProblemOfLineOne() {
    Taken taken =
        Taken.from(TableFile.of("arm.csv", "a,b\n1,2\n".getBytes(StandardCharsets.UTF_16)));
    assertEquals("sheet arm, line 1", taken.onlyProblem().where());
  }

  @ParameterizedTest
  @ValueSource(strings = {"a,b\n1,2\n\"3,4\n5,6\n", "a,b\n1,2\n\"3\"x,4\n"})
  void wrongQuotationMarksAreAProblemAtTheLineWhereTheRowStarts(String text) {
    Taken taken = Taken.fromCsv(text);
    assertEquals("wrong-quotation-marks", taken.onlyProblem().code());
    assertEquals("sheet arm, line 3", taken.onlyProblem().where());
    assertEquals(List.of(List.of("1", "2")), taken.texts());
  }

  @Test
  void aQuotationMarkLeftOpenDoesNotPullALargeFileIntoMemory() {
    byte[] start = "a,b\n1,2\n\"open,4\n".getBytes(StandardCharsets.UTF_8);
    byte[] filler = "5,6\n".repeat(1 << 18).getBytes(StandardCharsets.UTF_8);
    TableFile.Opening endless =
        () -> {
          List<InputStream> parts = new ArrayList<>(List.of(new ByteArrayInputStream(start)));
          for (int part = 0; part < 64; part++) {
            parts.add(new ByteArrayInputStream(filler));
          }
          return new SequenceInputStream(Collections.enumeration(parts));
        };
    Taken taken = Taken.from(new TableFile("arm.csv", endless));
    assertEquals("row-too-long", taken.onlyProblem().code());
    assertEquals("sheet arm, line 3", taken.onlyProblem().where());
  }

  @Test
  void anEmptyFileIsAProblem() {
    assertEquals("empty-sheet", Taken.fromCsv("").onlyProblem().code());
    assertEquals("empty-sheet", Taken.fromCsv("\uFEFF\n\n").onlyProblem().code());
  }

  @Test
  void aFileThatIsNotThereIsAProblem() {
    Taken taken = Taken.from(folder.resolve("missing.csv"));
    assertEquals("unreadable-file", taken.onlyProblem().code());
    assertEquals("missing.csv", taken.onlyProblem().where());
  }

  @Test
  void aFileThatCannotBeReadToItsEndIsAProblem() {
    TableFile.Opening breaking =
        () ->
            new SequenceInputStream(
                new ByteArrayInputStream("a,b\n1,2\n".getBytes(StandardCharsets.UTF_8)),
                new InputStream() {
                  @Override
                  public int read() throws IOException {
                    throw new IOException("the disk is gone");
                  }

                  @Override
                  public int read(byte[] target, int offset, int length) throws IOException {
                    return read();
                  }
                });
    Taken taken = Taken.from(new TableFile("arm.csv", breaking));
    assertEquals("unreadable-file", taken.onlyProblem().code());
  }

  @Test
  void aFolderIsReadFileByFileInTheOrderOfNames() throws IOException {
    Files.writeString(folder.resolve("study.csv"), "study\nA\n");
    Files.writeString(folder.resolve("arm.CSV"), "arm\n1\n");
    Files.writeString(folder.resolve(".arm.csv"), "hidden\n1\n");
    Files.writeString(folder.resolve("README.md"), "no table");
    Files.createDirectory(folder.resolve("deeper.csv"));
    Taken taken = Taken.from(folder);
    assertEquals(List.of("arm", "study"), taken.ended);
    assertTrue(taken.problems.isEmpty());
  }

  @Test
  void aFolderWithoutTablesIsAProblem() {
    assertEquals("no-tables", Taken.from(folder).onlyProblem().code());
  }

  @Test
  void twoFilesOfOneSheetAreAProblem() {
    byte[] text = "a\n1\n".getBytes(StandardCharsets.UTF_8);
    Taken taken = Taken.from(TableFile.of("arm.csv", text), TableFile.of("old/arm.csv", text));
    assertEquals("duplicate-sheet", taken.onlyProblem().code());
    assertEquals(1, taken.rows.size());
  }

  @Test
  void nothingIsSaidOfASheetThatIsNotWanted() {
    Taken taken =
        new Taken() {
          @Override
          public boolean wants(String sheet) {
            return sheet.equals("arm");
          }
        };
    byte[] wrong = "a,a\n1\n".getBytes(StandardCharsets.UTF_8);
    byte[] sound = "a\n1\n".getBytes(StandardCharsets.UTF_8);
    new TableReader()
        .read(
            List.of(TableFile.of("notes.csv", wrong), TableFile.of("arm.csv", sound)),
            taken.problems,
            taken);
    assertTrue(taken.problems.isEmpty());
    assertEquals(List.of("arm"), taken.ended);
  }

  @Test
  void whatTheConsumerThrowsReachesTheCaller() {
    IllegalStateException own = new IllegalStateException("own");
    Taken failing =
        new Taken() {
          @Override
          public void row(Row row) {
            throw own;
          }
        };
    TableFile file = TableFile.of("arm.csv", "a\n1\n".getBytes(StandardCharsets.UTF_8));
    TableReader reader = new TableReader();
    assertEquals(
        own,
        assertThrows(
            IllegalStateException.class,
            () -> reader.read(List.of(file), failing.problems, failing)));
  }

  @Test
  void readingStopsWhenEveryRowIsWrong() {
    Taken taken = Taken.fromCsv("a,b\n" + "1\n".repeat(5000));
    List<Problem> found = taken.problems.list();
    assertEquals(FileReading.MOST_PROBLEMS + 1, found.size());
    assertEquals("too-many-problems", found.get(found.size() - 1).code());
  }

  @Test
  void progressIsToldEveryFewHundredRowsAndAtTheEnd() {
    List<Long> told = new ArrayList<>();
    ByteArrayOutputStream text = new ByteArrayOutputStream();
    text.writeBytes("a\n".getBytes(StandardCharsets.UTF_8));
    text.writeBytes("1\n".repeat(1203).getBytes(StandardCharsets.UTF_8));
    Taken taken = new Taken();
    long rows =
        new TableReader(told::add)
            .read(List.of(TableFile.of("arm.csv", text.toByteArray())), new Problems(), taken);
    assertEquals(1203, rows);
    assertEquals(List.of(500L, 1000L, 1203L), told);
  }

  @Test
  void columnLettersAreThoseOfASpreadsheet() {
    // A, Z, AA, AZ, BA, ZZ, AAA, XFD: ECMA-376 part 1, 18.3.1.4, references in A1 style.
    assertEquals(
        List.of("A", "Z", "AA", "AZ", "BA", "ZZ", "AAA", "XFD"),
        List.of(0, 25, 26, 51, 52, 701, 702, 16383).stream().map(Column::letter).toList());
  }
}
