package gapwise.selection;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The rows of a selection, found again by study and arm: an arm has one row. */
public final class RowsByArm {
  private final Map<List<String>, SelectedRow> rows = new HashMap<>();

  private RowsByArm(Selection selection) {
    selection.rows().forEach(row -> rows.put(List.of(row.study().id(), row.arm().id()), row));
  }

  /** Those of a selection. */
  public static RowsByArm of(Selection selection) {
    return new RowsByArm(selection);
  }

  /** The row of an arm; empty for what came from elsewhere than the selection. */
  public Optional<SelectedRow> row(Optional<String> studyId, Optional<String> armId) {
    return studyId.isEmpty() || armId.isEmpty()
        ? Optional.empty()
        : Optional.ofNullable(rows.get(List.of(studyId.get(), armId.get())));
  }
}
