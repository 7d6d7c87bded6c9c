package gapwise.course;

import gapwise.evidence.PublishedCurve;
import gapwise.selection.SelectedRow;
import java.util.Objects;

/**
 * A curve that enters.
 *
 * @param row the arm that it is of
 * @param curve what was read
 * @param patients at its start, at least 1
 * @param ofArm whether the patients are those of the arm, since the paper gives none of the curve
 */
public record CurveTaken(SelectedRow row, PublishedCurve curve, int patients, boolean ofArm) {
  public CurveTaken {
    Objects.requireNonNull(row, "row");
    Objects.requireNonNull(curve, "curve");
    if (patients < 1) {
      throw new IllegalArgumentException("a curve needs a patient, had " + patients);
    }
  }

  /** What plan and lists call it; unique among the curves of a question. */
  public String label() {
    return row.label();
  }
}
