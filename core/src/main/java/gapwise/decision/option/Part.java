package gapwise.decision.option;

import gapwise.answer.MethodLine;
import gapwise.figure.value.Estimate;
import gapwise.selection.SelectedRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A row with its part of the information, 0 to 1: its weight in the pooled value; else, where
 * nothing was pooled, by how many patients it speaks of, each row alike where none says.
 */
record Part(SelectedRow row, double share, Optional<Estimate> value) {

  static List<Part> of(List<MethodLine.Weighed> rows) {
    double weights = rows.stream().mapToDouble(one -> one.weightPercent().orElse(0)).sum();
    double people = rows.stream().mapToDouble(one -> one.row().speaksOf().orElse(0)).sum();
    List<Part> parts = new ArrayList<>();
    for (MethodLine.Weighed one : rows) {
      double share =
          weights > 0
              ? one.weightPercent().orElse(0) / weights
              : people > 0 ? one.row().speaksOf().orElse(0) / people : 1.0 / rows.size();
      parts.add(new Part(one.row(), share, one.value()));
    }
    return parts;
  }
}
