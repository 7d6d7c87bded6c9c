package gapwise.server.page.option;

import gapwise.answer.ComparisonAlert;
import gapwise.decision.option.OptionTable;
import gapwise.selection.SelectedRow;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What stands against reading the options as a comparison.
 *
 * @param groups what differs between the groups of patients; empty where fewer than two methods
 *     have any
 */
public record Differences(Optional<ComparisonAlert> groups) {

  static Differences of(OptionTable table) {
    Map<List<String>, SelectedRow> groups = new LinkedHashMap<>();
    table.columns().stream()
        .flatMap(column -> column.rows().stream())
        .forEach(row -> groups.putIfAbsent(List.of(row.study().id(), row.arm().id()), row));
    return new Differences(ComparisonAlert.of(List.copyOf(groups.values())));
  }
}
