package gapwise.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Study;
import gapwise.exchange.form.Guard;
import gapwise.exchange.form.WorkbookText;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.table.TableFile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import org.apache.poi.ss.SpreadsheetVersion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Texts at the limit of a spreadsheet's cell, 32,767 letters as the library for workbooks knows it,
 * and texts that look like the escapes of ECMA-376 part 1, 22.9.2.19.
 */
class LongAndOddTextTest {
  private static final int MOST = 32_767;

  private static FilledTemplate titled(String title) {
    return FilledTemplate.sound().set("studies", 0, "title=" + title);
  }

  private static List<Study> ready(Imported read) {
    return ((Imported.Ready) read).studies();
  }

  private static List<Study> throughAWorkbook(List<Study> studies) throws IOException {
    return ready(Import.read(List.of(RoundTripTest.workbook(studies)), Set.of(), rows -> {}));
  }

  @Test
  void aTextTooLongForACellIsRefusedAtItsCellWithItsLength() {
    Problem problem = titled("x".repeat(MOST + 1)).found().get(0);
    assertEquals("text-too-long", problem.code());
    assertEquals("sheet studies, row 2, column B (title)", problem.where());
    assertTrue(problem.message().contains("32,768 letters"), problem.message());
    assertTrue(problem.message().contains("at most 32,767"), problem.message());
    assertTrue(problem.message().length() < 500, problem.message());
  }

  @Test
  void theLimitIsThatOfTheLibraryForWorkbooks() {
    assertEquals(SpreadsheetVersion.EXCEL2007.getMaxTextLength(), MOST);
  }

  @Test
  void theLongestTextThatACellHoldsComesBackEqual() throws IOException {
    List<Study> studies = ready(titled("y".repeat(MOST)).read());
    assertEquals(studies, throughAWorkbook(studies));
  }

  /** The mark before a formula, and the escape of what XML cannot hold, need room in the cell. */
  @ParameterizedTest
  @ValueSource(strings = {"=", "_x0041_", "\u0001"})
  void theMarksThatKeepATextWhatItIsAreCounted(String start) throws IOException {
    String written = WorkbookText.of(Guard.write(start));
    String longest = start + "z".repeat(MOST - written.length());
    List<Study> studies = ready(titled(longest).read());
    assertEquals(studies, throughAWorkbook(studies));
    assertEquals("text-too-long", titled(longest + "z").found().get(0).code());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "_x0041_ is no A",
        "_x000D_",
        "_x000d_ small",
        "_x0041_x0042_",
        "_x005F_x0041_",
        "__x0041__",
        "_x00G1_ is none",
        "one\rline",
        "two\r\nlines",
        "tab\tand\nline",
        "bell \u0007 and escape \u001b[31m",
        "delete \u007f, next line \u0085, separator \u2028.",
        "no character \uffff or \ufffe",
        "\ud83e\uddb4 bone",
        "'_x0041_"
      })
  void textsThatAWorkbookEscapesComeBackEqual(String text) throws IOException {
    List<Study> studies = ready(titled(text).read());
    assertEquals(text, studies.get(0).citation().title());
    assertEquals(studies, throughAWorkbook(studies));
  }

  /** Records of before the limit: nothing is cut unseen, and there is a way out. */
  @Test
  void anOlderRecordWithALongerTextIsNamedByTheWorkbookAndHeldByCsv() throws IOException {
    Study sound = ready(FilledTemplate.sound().read()).get(0);
    Study old = older(sound, "n".repeat(40_000));
    ByteArrayOutputStream target = new ByteArrayOutputStream();
    WrongInputException wrong =
        assertThrows(WrongInputException.class, () -> Export.workbook(List.of(sound, old), target));
    assertEquals(0, target.size());
    Problem problem = wrong.problems().get(0);
    assertEquals(1, wrong.problems().size());
    assertEquals("study old, sheet studies, column note", problem.where());
    assertTrue(problem.message().contains("40,000 letters"), problem.message());
    StringBuilder csv = new StringBuilder();
    Export.csv(List.of(old), "studies", csv);
    assertTrue(csv.indexOf("n".repeat(40_000)) > 0);
  }

  private static Study older(Study like, String note) {
    return Study.with("old", like.citation()).arms(like.arms()).note(note).build();
  }

  @Test
  void aNameOfAColumnOfMegabytesIsToldShort() {
    byte[] csv =
        ("study_id,title," + "c".repeat(3_000_000) + "\r\n").getBytes(StandardCharsets.UTF_8);
    Problem problem = problems(csv).get(0);
    assertEquals("unknown-column", problem.code());
    assertTrue(problem.line().length() < 500, problem.line().length() + " letters");
  }

  @Test
  void aHeaderOfMoreColumnsThanASheetHasIsOneProblem() {
    byte[] csv = ("study_id" + ",c".repeat(100_000)).getBytes(StandardCharsets.UTF_8);
    List<Problem> problems = problems(csv);
    assertEquals("too-many-columns", problems.get(0).code());
    assertTrue(problems.size() < 5, problems::toString);
  }

  private static List<Problem> problems(byte[] studies) {
    Imported read =
        Import.read(List.of(TableFile.of("studies.csv", studies)), Set.of(), rows -> {});
    return ((Imported.Wrong) read).problems();
  }
}
