package gapwise.exchange;

import gapwise.evidence.Study;
import gapwise.exchange.form.WorkbookText;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.io.IOException;
import java.io.OutputStream;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;

/**
 * Writes studies into the template, as a workbook or as CSV, without loss: reading it again gives
 * equal studies. With no studies it writes the blank template.
 */
public final class Export {
  private Export() {}

  /** The names of the sheets in their order. */
  public static List<String> sheets() {
    return sheets(List.of()).stream().map(Sheet::name).toList();
  }

  /**
   * Writes one workbook (.xlsx) with all sheets.
   *
   * @param target not closed
   */
  public static void workbook(List<Study> studies, OutputStream target) throws IOException {
    workbook(studies, List.of(), target);
  }

  /**
   * The same with notes at the head of its first page, such as what was selected and when.
   *
   * @param target not closed
   * @throws WrongInputException naming each text that no cell of a workbook can hold; nothing has
   *     been written then. Such texts are no longer taken in, but older records may have them; CSV
   *     files hold them.
   */
  public static void workbook(List<Study> studies, List<String> notes, OutputStream target)
      throws IOException {
    List<Sheet> sheets = sheets(studies);
    List<Problem> tooLong = sheets.stream().flatMap(sheet -> tooLong(studies, sheet)).toList();
    if (!tooLong.isEmpty()) {
      throw new WrongInputException(tooLong);
    }
    Map<String, Stream<RowWriter>> rows = new HashMap<>();
    sheets.forEach(sheet -> rows.put(sheet.name(), rows(studies, sheet)));
    new WorkbookWriter().write(notes, sheets, rows, target);
  }

  /**
   * Writes one sheet as CSV (RFC 4180), column names first, then the row of descriptions.
   *
   * @param sheet one of {@link #sheets()}; the file should be named the same with ".csv"
   * @param target not closed
   * @throws IllegalArgumentException for another sheet
   */
  public static void csv(List<Study> studies, String sheet, Appendable target) throws IOException {
    SheetFiles.of(studies::forEach).write(sheet, target);
  }

  private static Stream<Problem> tooLong(List<Study> studies, Sheet sheet) {
    return rows(studies, sheet)
        .flatMap(
            row ->
                row.cells().entrySet().stream()
                    .filter(cell -> WorkbookText.isTooLong(cell.getValue().text()))
                    .map(cell -> tooLong(row, sheet, cell.getKey(), cell.getValue().text())));
  }

  private static Problem tooLong(RowWriter row, Sheet sheet, String field, String text) {
    String study = Objects.requireNonNull(row.cells().get(Keys.STUDY.name())).text();
    return new Problem(
        "study " + study + ", sheet " + sheet.name() + ", column " + field,
        "text-too-long",
        String.format(
            Locale.ROOT,
            "The text has %,d letters and a cell of a workbook holds at most %,d. Import the study"
                + " again with a shorter text, or write CSV files, which hold it (command export"
                + " --csv).",
            text.length(),
            WorkbookText.MOST_LETTERS));
  }

  static List<Sheet> sheets(List<Study> studies) {
    return sheets(PatientSheet.sheetFor(studies));
  }

  static List<Sheet> sheets(Sheet patients) {
    return List.of(
        StudySheet.SHEET,
        ArmSheet.SHEET,
        OutcomeSheet.SHEET,
        patients,
        AppraisalSheet.SHEET,
        CurveSheet.SHEET);
  }

  static Stream<RowWriter> rows(List<Study> studies, Sheet sheet) {
    return switch (sheet.name()) {
      case "studies" -> studies.stream().map(StudySheet::write);
      case "arms" -> studies.stream().flatMap(study -> ArmSheet.write(study).stream());
      case "outcomes" -> studies.stream().flatMap(study -> OutcomeSheet.write(study).stream());
      case "appraisal" -> studies.stream().flatMap(study -> AppraisalSheet.write(study).stream());
      case "curves" -> studies.stream().flatMap(study -> CurveSheet.write(study).stream());
      default -> studies.stream().flatMap(study -> PatientSheet.write(study, sheet).stream());
    };
  }
}
