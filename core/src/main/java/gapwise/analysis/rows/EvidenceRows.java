package gapwise.analysis.rows;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.result.ReadCounts;
import gapwise.analysis.result.ReportedCentres;
import gapwise.analysis.result.Result;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Turns a plan's selection from the curated store into rows. Implemented outside this room. */
@FunctionalInterface
public interface EvidenceRows {
  /**
   * Selects.
   *
   * @param evidence the plan's {@code source.evidence}, already checked against the schema
   * @param measure the plan's measure, which says what roles the rows need
   * @throws gapwise.problem.WrongInputException if the selection names what does not exist
   */
  Selected rows(JsonNode evidence, String measure);

  /**
   * The rows selected.
   *
   * @param rows by role name ({@code study}, {@code events}, {@code intervention.total}, ...), and
   *     {@code method}; a value left out is missing
   * @param warnings what was left out of the selection and why
   * @param reported what they report as means and medians, with or without a spread
   * @param sha256 hash of the records read, in hexadecimal
   * @param extraction how their studies were read
   */
  record Selected(
      List<Map<String, RowValue>> rows,
      List<Result.Warning> warnings,
      List<ReportedCentres> reported,
      String sha256,
      Optional<ReadCounts> extraction) {
    /** Rows of which nobody says how they were read. */
    public Selected(
        List<Map<String, RowValue>> rows,
        List<Result.Warning> warnings,
        List<ReportedCentres> reported,
        String sha256) {
      this(rows, warnings, reported, sha256, Optional.empty());
    }

    public Selected {
      rows = rows.stream().map(Map::copyOf).toList();
      warnings = List.copyOf(warnings);
      reported = List.copyOf(reported);
    }
  }
}
