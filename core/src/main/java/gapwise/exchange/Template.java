package gapwise.exchange;

import gapwise.evidence.Study;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** The sheets and columns of the template, and a study as its rows. */
public final class Template {
  /** One row for each study. */
  public static final String STUDIES = StudySheet.SHEET.name();

  /** One row for each group of patients. */
  public static final String ARMS = ArmSheet.SHEET.name();

  /** One row for each number, or group of numbers, of an outcome. */
  public static final String OUTCOMES = OutcomeSheet.SHEET.name();

  /** One row for each patient. */
  public static final String PATIENTS = PatientSheet.FULL.name();

  /** One row for each item that people judged. */
  public static final String APPRAISAL = AppraisalSheet.SHEET.name();

  /** One row for each point of a published curve, or number at risk under it. */
  public static final String CURVES = CurveSheet.SHEET.name();

  /** The column that names the study, on every sheet. */
  public static final String STUDY = Keys.STUDY.name();

  /** The column that names the group. */
  public static final String ARM = Keys.ARM.name();

  /** Stands in {@link #ARM} for all groups together. */
  public static final String ALL = Keys.ALL;

  /** The column that names an outcome. */
  public static final String OUTCOME = OutcomeSheet.OUTCOME.name();

  /** Stands in the column of items for the judgement on the whole. */
  public static final String OVERALL = AppraisalSheet.OVERALL;

  /** The column that names a patient. */
  public static final String PATIENT = PatientSheet.PATIENT.name();

  /** The column that says where single numbers stand. */
  public static final String READINGS = ProvenanceFields.READINGS.name();

  private static final Map<String, Map<String, TemplateColumn>> SHEETS = sheets();

  private Template() {}

  private static Map<String, Map<String, TemplateColumn>> sheets() {
    Map<String, Map<String, TemplateColumn>> sheets = new LinkedHashMap<>();
    for (Sheet sheet :
        List.of(
            StudySheet.SHEET,
            ArmSheet.SHEET,
            OutcomeSheet.SHEET,
            PatientSheet.FULL,
            AppraisalSheet.SHEET,
            CurveSheet.SHEET)) {
      Map<String, TemplateColumn> columns = new LinkedHashMap<>();
      sheet.fields().forEach(field -> columns.put(field.name(), TemplateColumn.of(field)));
      sheets.put(sheet.name(), Collections.unmodifiableMap(columns));
    }
    return Collections.unmodifiableMap(sheets);
  }

  /** The names of the sheets in their order. */
  public static List<String> names() {
    return List.copyOf(SHEETS.keySet());
  }

  /**
   * The columns of a sheet from left to right, of the patients' one for every outcome.
   *
   * @throws IllegalArgumentException for another name
   */
  public static List<TemplateColumn> columns(String sheet) {
    return List.copyOf(sheet(sheet).values());
  }

  /** One column; empty where the sheet has none of this name. */
  public static Optional<TemplateColumn> column(String sheet, String name) {
    return Optional.ofNullable(sheet(sheet).get(name));
  }

  private static Map<String, TemplateColumn> sheet(String name) {
    Map<String, TemplateColumn> sheet = SHEETS.get(name);
    if (sheet == null) {
      throw new IllegalArgumentException("no sheet " + name + " among " + names());
    }
    return sheet;
  }

  /**
   * A row of a sheet.
   *
   * @param sheet name of the sheet
   * @param cells the texts of its cells by column, those that hold something
   */
  public record FilledRow(String sheet, Map<String, String> cells) {
    public FilledRow {
      Objects.requireNonNull(sheet, "sheet");
      cells = Collections.unmodifiableMap(new LinkedHashMap<>(cells));
    }
  }

  /** A study as the rows of the template, in their order: reading them gives the study again. */
  public static List<FilledRow> rows(Study study) {
    List<FilledRow> rows = new ArrayList<>();
    List<Study> one = List.of(study);
    for (Sheet sheet : Export.sheets(one)) {
      Export.rows(one, sheet)
          .forEach(
              row -> {
                Map<String, String> cells = new LinkedHashMap<>();
                row.cells().forEach((column, cell) -> cells.put(column, cell.text()));
                rows.add(new FilledRow(sheet.name(), cells));
              });
    }
    return rows;
  }
}
