package gapwise.analysis.rows;

import gapwise.problem.Problems;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Which column each role is read from: the one the plan names, or the one of the role's own name.
 *
 * @param byRole only roles that have a column
 */
public record Columns(Map<String, String> byRole) {
  public Columns {
    byRole = Collections.unmodifiableMap(new LinkedHashMap<>(byRole));
  }

  /**
   * Columns as a plan names them.
   *
   * @param where the field of the plan that does
   * @param byRole role to column
   * @param what needs them, for people
   */
  public record Named(String where, Map<String, String> byRole, String what) {}

  /**
   * Resolves.
   *
   * @param roles that have a meaning for what is asked
   * @param required the ones without which no row can be read
   */
  public static Columns resolve(
      Named named, DataTable table, List<String> roles, List<String> required, Problems problems) {
    Map<String, String> byRole = new LinkedHashMap<>();
    named
        .byRole()
        .forEach(
            (role, column) -> {
              if (!table.columns().contains(column)) {
                problems.add(
                    named.where() + "." + role,
                    "unknown-column",
                    "there is no column '" + column + "'; the data have " + table.columns());
              }
            });
    for (String role : roles) {
      String column = named.byRole().getOrDefault(role, role);
      if (table.columns().contains(column)) {
        byRole.put(role, column);
      } else if (required.contains(role) && !named.byRole().containsKey(role)) {
        problems.add(
            named.where() + "." + role,
            "missing-column",
            RoleWords.missing(role, named.what())
                + " Name the column that holds it in columns, as \""
                + role
                + "\", or call it so in the data."
                + " The data have "
                + table.columns()
                + "."
                + RoleWords.spreadToo(
                    role,
                    roles,
                    one -> table.columns().contains(named.byRole().getOrDefault(one, one))));
      }
    }
    return new Columns(byRole);
  }

  /**
   * The column of a role.
   *
   * @param role one that {@link #has has} a column
   */
  public String column(String role) {
    return Objects.requireNonNull(byRole.get(role), role);
  }

  public boolean has(String role) {
    return byRole.containsKey(role);
  }

  /** The label of a row: its study, or its number. */
  public String label(DataTable.Row row) {
    String study = byRole.containsKey("study") ? row.text(column("study")) : "";
    return study.isEmpty() ? row.place() : study;
  }
}
