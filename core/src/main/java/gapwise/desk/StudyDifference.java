package gapwise.desk;

import gapwise.evidence.Study;
import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import gapwise.exchange.TemplateWords;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What differs between two versions of a study, field by field, in the terms of the template. */
public final class StudyDifference {
  /** What tells a row of each sheet from its neighbours; rows alike in these go by their order. */
  private static final Map<String, List<String>> IDENTITY =
      Map.of(
          Template.STUDIES, List.of(),
          Template.ARMS, List.of(Template.ARM),
          Template.OUTCOMES,
              List.of(
                  Template.ARM,
                  "against_arm",
                  "outcome",
                  "phase",
                  "subgroup",
                  "time_point",
                  "clock",
                  "standing"),
          Template.PATIENTS, List.of(Template.PATIENT),
          Template.APPRAISAL, List.of("instrument", "outcome", "comparison", "item"));

  private StudyDifference() {}

  /**
   * One field that differs.
   *
   * @param sheet sheet of the template
   * @param row what tells the row from its neighbours; empty for the study itself
   * @param whose the same as people read it
   * @param column the column
   * @param before its text before; empty where nothing stood there
   * @param after its text after; empty where nothing stands there
   */
  public record Change(
      String sheet,
      List<String> row,
      List<String> whose,
      TemplateColumn column,
      String before,
      String after) {
    public Change {
      Objects.requireNonNull(sheet, "sheet");
      row = List.copyOf(row);
      whose = List.copyOf(whose);
      Objects.requireNonNull(column, "column");
    }
  }

  /** What differs, sheet by sheet, in the order of rows and columns; empty where nothing does. */
  public static List<Change> between(Study before, Study after) {
    List<Change> changes = new ArrayList<>();
    Map<Key, Map<String, String>> old = byKey(Template.rows(before));
    Map<Key, Map<String, String>> now = byKey(Template.rows(after));
    Set<Key> keys = new LinkedHashSet<>(now.keySet());
    keys.addAll(old.keySet());
    for (String sheet : Template.names()) {
      keys.stream()
          .filter(key -> key.sheet().equals(sheet))
          .forEach(
              key ->
                  changes.addAll(
                      ofRow(
                          key,
                          Optional.ofNullable(old.get(key)).orElse(Map.of()),
                          Optional.ofNullable(now.get(key)).orElse(Map.of()))));
    }
    changes.addAll(CurveDifference.between(before, after));
    return List.copyOf(changes);
  }

  private record Key(String sheet, List<String> identity, int occurrence) {}

  private static Map<Key, Map<String, String>> byKey(List<Template.FilledRow> rows) {
    Map<Key, Integer> seen = new HashMap<>();
    Map<Key, Map<String, String>> byKey = new LinkedHashMap<>();
    for (Template.FilledRow row : rows) {
      if (row.sheet().equals(Template.CURVES)) {
        continue;
      }
      List<String> identity =
          Objects.requireNonNull(IDENTITY.get(row.sheet()), row.sheet()).stream()
              .map(column -> row.cells().getOrDefault(column, ""))
              .toList();
      int occurrence = seen.merge(new Key(row.sheet(), identity, 0), 1, Integer::sum);
      byKey.put(new Key(row.sheet(), identity, occurrence), row.cells());
    }
    return byKey;
  }

  private static List<Change> ofRow(
      Key key, Map<String, String> before, Map<String, String> after) {
    Set<String> columns =
        Stream.concat(before.keySet().stream(), after.keySet().stream())
            .filter(column -> !Objects.equals(before.get(column), after.get(column)))
            .collect(Collectors.toCollection(TreeSet::new));
    List<String> columnsOfRow = Objects.requireNonNull(IDENTITY.get(key.sheet()), key.sheet());
    List<String> whose =
        TemplateWords.row(
            key.sheet(), columnsOfRow, column -> key.identity().get(columnsOfRow.indexOf(column)));
    List<String> row = key.identity().stream().filter(text -> !text.isEmpty()).toList();
    return Template.columns(key.sheet()).stream()
        .filter(column -> columns.contains(column.name()))
        .filter(column -> !column.name().equals(Template.STUDY))
        .map(
            column ->
                new Change(
                    key.sheet(),
                    row,
                    whose,
                    column,
                    before.getOrDefault(column.name(), ""),
                    after.getOrDefault(column.name(), "")))
        .toList();
  }
}
