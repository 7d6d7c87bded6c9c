package gapwise.analysis.rows;

import gapwise.analysis.result.ReadCounts;
import gapwise.analysis.result.ReportedCentres;
import gapwise.analysis.result.Result;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The rows a plan is run on.
 *
 * @param columns names in their order
 * @param rows at least one, unless the plan needs none
 * @param warnings from making the rows
 * @param reported what rows of the evidence base report as means and medians
 * @param sha256 hash of the data, in hexadecimal
 * @param extraction how the studies of the evidence base were read; empty for other data
 * @param beside a second table that the plan names, such as numbers at risk
 */
public record DataTable(
    Set<String> columns,
    List<Row> rows,
    List<Result.Warning> warnings,
    List<ReportedCentres> reported,
    String sha256,
    Optional<ReadCounts> extraction,
    Optional<DataTable> beside) {
  /** The column of the study's id in rows out of the evidence base. */
  public static final String STUDY_ID = "studyId";

  /** The column of the arm's id. */
  public static final String ARM_ID = "armId";

  public DataTable {
    columns = Collections.unmodifiableSet(new LinkedHashSet<>(columns));
    rows = List.copyOf(rows);
    warnings = List.copyOf(warnings);
    reported = List.copyOf(reported);
  }

  /** One table alone. */
  DataTable(Set<String> columns, List<Row> rows, List<Result.Warning> warnings, String sha256) {
    this(columns, rows, warnings, List.of(), sha256, Optional.empty(), Optional.empty());
  }

  /** The same with a second table; the hash is of both hashes. */
  DataTable with(DataTable other) {
    String both = Hash.sha256((sha256 + other.sha256).getBytes(StandardCharsets.US_ASCII));
    return new DataTable(columns, rows, warnings, reported, both, extraction, Optional.of(other));
  }

  /**
   * One row.
   *
   * @param number from 1
   * @param cells by column, without blank ones
   */
  public record Row(int number, Map<String, RowValue> cells) {
    public Row {
      cells = Collections.unmodifiableMap(new LinkedHashMap<>(cells));
    }

    /** The id of the study in the evidence base, where the row comes from there. */
    public Optional<String> studyId() {
      return Optional.ofNullable(cells.get(STUDY_ID)).map(RowValue::text);
    }

    /** The id of its arm, where it comes from there. */
    public Optional<String> armId() {
      return Optional.ofNullable(cells.get(ARM_ID)).map(RowValue::text);
    }

    /** A warning about this row, which says whose it is. */
    public Result.Warning warning(String code, String message, String label) {
      return Result.Warning.of(code, message, label).about(studyId(), armId());
    }

    /** The text in a column; empty text if it is blank. */
    public String text(String column) {
      return value(column).text();
    }

    /** The number in a column; empty if it is blank or no number. */
    public OptionalDouble number(String column) {
      return value(column).number();
    }

    /** What stands in a column; an empty text if it is blank. */
    public RowValue value(String column) {
      return cells.getOrDefault(column, RowValue.BLANK);
    }

    /** Where it is, for people. */
    public String place() {
      return "row " + number;
    }
  }
}
