package gapwise.untidy;

import gapwise.printed.Printed;
import gapwise.printed.PrintedValue;
import java.util.List;

/** Of whom the entities of a table tell. */
enum Kind {
  PATIENTS,
  GROUPS,
  /** Each entity is an outcome, named in a column. */
  OUTCOMES;

  /** Below this share of single values a table is none of patients; our choice. */
  private static final double SINGLE = 0.6;

  static Kind of(Logical table) {
    boolean named =
        !table.of("outcome-name").isEmpty()
            && table.variables().stream()
                .anyMatch(v -> v.target().isEmpty() || v.target().equals("value"));
    boolean ofTwo =
        table.of("male-female").stream().anyMatch(one -> share(table, one, Kind::isSex) > SINGLE)
            || !table.of("age-sex").isEmpty();
    boolean grouped =
        !table.of("patients").isEmpty()
            || !table.of("male").isEmpty()
            || (!table.of("male-female").isEmpty() && !ofTwo);
    boolean ids = !table.of("patient-id").isEmpty() || names(table) >= 2;
    boolean sexes =
        ofTwo || table.of("sex").stream().anyMatch(sex -> share(table, sex, Kind::isSex) > SINGLE);
    boolean numbered =
        !table.of("row-number").isEmpty()
            && (sexes || table.of("study").isEmpty() && table.of("method").isEmpty());
    if (named && !table.turned() && !sexes && table.of("patient-id").isEmpty()) {
      return OUTCOMES;
    }
    return !grouped && (sexes || (ids || numbered) && single(table)) ? PATIENTS : GROUPS;
  }

  private static long names(Logical table) {
    return table.names().stream()
        .filter(
            above ->
                above.stream()
                    .anyMatch(
                        cell ->
                            cell.text()
                                .matches(
                                    "(?i)(patient|case|pt|fall|subject)\\b.*\\d+|p\\d+|\\d{1,3}")))
        .count();
  }

  private static boolean isSex(String text) {
    return text.strip().matches("(?i)m|f|w|male|female|man|woman|h|männlich|weiblich|♂|♀");
  }

  /** Whether cells hold one value each, as those of a patient do. */
  private static boolean single(Logical table) {
    List<Variable> measured =
        table.variables().stream().filter(v -> !Targets.isIdentity(v.target())).toList();
    return measured.isEmpty()
        || measured.stream().mapToDouble(v -> share(table, v, Kind::isSingle)).average().orElse(0)
            > SINGLE;
  }

  private static boolean isSingle(String text) {
    PrintedValue value = Printed.read(text);
    return !(value instanceof PrintedValue.Share || value instanceof PrintedValue.Summary);
  }

  private static double share(
      Logical table, Variable variable, java.util.function.Predicate<String> such) {
    int seen = 0;
    int found = 0;
    for (int entity = 0; entity < table.entities().size(); entity++) {
      String text = table.cell(entity, variable).map(GridCell::text).orElse("");
      if (!text.isEmpty()) {
        seen++;
        found += such.test(text) ? 1 : 0;
      }
    }
    return seen == 0 ? 0 : (double) found / seen;
  }
}
