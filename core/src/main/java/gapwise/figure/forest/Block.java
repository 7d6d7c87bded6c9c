package gapwise.figure.forest;

import java.util.List;
import java.util.Objects;

/**
 * One group of series, usually one method, with its summary.
 *
 * @param name name in words; empty when the figure has one unnamed block
 * @param rows its series in order; may be empty
 * @param summary pooled value or why there is none
 */
public record Block(String name, List<ForestRow> rows, ForestSummary summary) {
  public Block {
    Objects.requireNonNull(name, "name");
    rows = List.copyOf(rows);
    Objects.requireNonNull(summary, "summary");
  }
}
