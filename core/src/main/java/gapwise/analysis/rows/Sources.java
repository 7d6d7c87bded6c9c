package gapwise.analysis.rows;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;

/**
 * The sources of a plan.
 *
 * @param first of its rows; empty for a plan that needs none
 * @param beside of a second table
 */
public record Sources(Optional<Source> first, Optional<Second> beside) {
  private static final List<String> SECOND = List.of("numbersAtRisk", "summaries");

  /**
   * A second table.
   *
   * @param field of the plan that names it
   */
  public record Second(String field, Source source) {}

  /** Reads them from a checked plan. */
  public static Sources of(ObjectNode full) {
    return new Sources(
        Optional.ofNullable(full.get("source")).map(Source::of),
        SECOND.stream()
            .filter(field -> full.path(field).isObject())
            .findFirst()
            .map(field -> new Second(field, Source.of(full.get(field)))));
  }
}
