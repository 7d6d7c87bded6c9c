package gapwise.paper.reading;

import gapwise.printed.Proposed.State;
import gapwise.untidy.FoundField;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Asks where tables give one field several values: one of them is of something else, such as a row
 * of a list of characteristics taken for the size of the group.
 */
final class Contradictions {
  private Contradictions() {}

  static List<PaperField> asked(List<PaperField> fields) {
    Map<String, Set<String>> values = new HashMap<>();
    for (PaperField field : fields) {
      if (!field.field().value().text().isEmpty()) {
        values
            .computeIfAbsent(key(field.field()), key -> new HashSet<>())
            .add(field.field().value().text());
      }
    }
    List<PaperField> asked = new ArrayList<>();
    for (PaperField field : fields) {
      Set<String> all = values.getOrDefault(key(field.field()), Set.of());
      boolean several = all.size() > 1 && field.field().value().state() == State.TAKEN;
      asked.add(
          several
              ? field.askedBecause(
                  "The tables of the paper give this field the values "
                      + String.join(", ", all.stream().sorted().toList())
                      + ". Choose the one that is meant, and leave the others.")
              : field);
    }
    return asked;
  }

  private static String key(FoundField field) {
    return String.join(
        "|",
        field.into(),
        field.whose().toString(),
        field.outcome().orElse(""),
        field.row().toString(),
        field.value().column());
  }
}
