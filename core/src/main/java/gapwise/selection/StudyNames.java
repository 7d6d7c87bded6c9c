package gapwise.selection;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Tells studies apart that share first author and year, which papers do: by their ids. */
final class StudyNames {
  private StudyNames() {}

  /** The rows, each under a name that no other study among them has. */
  static List<SelectedRow> toldApart(List<SelectedRow> rows) {
    Map<String, String> firstOfName = new HashMap<>();
    Map<String, Boolean> shared = new HashMap<>();
    for (SelectedRow row : rows) {
      String name = row.studyName();
      String first = firstOfName.putIfAbsent(name, row.study().id());
      if (first != null && !first.equals(row.study().id())) {
        shared.put(name, true);
      }
    }
    return shared.isEmpty()
        ? rows
        : rows.stream()
            .map(
                row ->
                    shared.containsKey(row.studyName())
                        ? row.named(row.studyName() + " (" + row.study().id() + ")")
                        : row)
            .toList();
  }
}
