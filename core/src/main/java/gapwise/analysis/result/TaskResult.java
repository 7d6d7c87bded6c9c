package gapwise.analysis.result;

import java.util.Optional;

/** What one task makes of the data; it stands in a {@link Result} between data and warnings. */
public interface TaskResult {
  /** The field of the JSON that holds it; empty if its own fields stand there side by side. */
  default Optional<String> field() {
    return Optional.empty();
  }
}
