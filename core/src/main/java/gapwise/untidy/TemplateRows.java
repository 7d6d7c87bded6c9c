package gapwise.untidy;

import gapwise.evidence.unit.Unit;
import gapwise.exchange.form.Guard;
import gapwise.printed.Proposed;
import gapwise.table.TableFile;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * What a person accepted, as the sheets of the template, for the ordinary import with its checks.
 * Fields that are asked or left are not written: whoever accepts one gives it here as taken.
 */
public final class TemplateRows {
  private static final List<String> SHEETS = List.of("studies", "arms", "outcomes", "patients");

  private static final List<String> WITH_UNITS = List.of("defect_length", "age", "follow_up");

  private final Map<String, Map<String, Map<String, String>>> sheets = new LinkedHashMap<>();
  private final List<String> notWritten = new ArrayList<>();

  private TemplateRows() {
    SHEETS.forEach(sheet -> sheets.put(sheet, new LinkedHashMap<>()));
  }

  /**
   * The sheets, and what could not be written.
   *
   * @param files CSV files named as the template's sheets
   * @param notWritten sentences about values that have no place beside others
   */
  public record Written(List<TableFile> files, List<String> notWritten) {
    public Written {
      files = List.copyOf(files);
      notWritten = List.copyOf(notWritten);
    }
  }

  /** The sheets of fields; only those whose state is taken are written. */
  public static Written of(List<FoundField> fields) {
    TemplateRows rows = new TemplateRows();
    fields.stream()
        .filter(field -> field.value().state() == Proposed.State.TAKEN)
        .forEach(rows::put);
    rows.titles();
    return new Written(
        SHEETS.stream().filter(sheet -> !rows.rows(sheet).isEmpty()).map(rows::file).toList(),
        rows.notWritten);
  }

  private Map<String, Map<String, String>> rows(String sheet) {
    return Objects.requireNonNull(sheets.get(sheet), "sheet");
  }

  private void put(FoundField field) {
    FoundField.Whose whose = field.whose();
    row("studies", whose.study(), whose);
    whose.arm().ifPresent(arm -> row("arms", whose.study() + "|" + arm, whose));
    Map<String, String> row = row(field.into(), key(field), whose);
    field.outcome().ifPresent(outcome -> row.put("outcome", outcome));
    field
        .row()
        .timePoint()
        .ifPresent(
            at -> {
              row.put("time_point", number(at.value()));
              row.put("time_point_unit", at.unit().symbol());
            });
    field.row().subgroup().ifPresent(subgroup -> row.put("subgroup", subgroup));
    field
        .row()
        .subgroup()
        .flatMap(Bands::of)
        .ifPresent(
            band -> {
              band.from().ifPresent(from -> row.put("defect_from_cm", number(from)));
              band.to().ifPresent(to -> row.put("defect_to_cm", number(to)));
            });
    // Patients numbered from 1 in each group have a name of their own in the row already.
    if (!field.value().column().equals("patient")) {
      value(field, row);
    }
  }

  private static String number(double value) {
    return String.valueOf(value).replaceFirst("\\.0$", "");
  }

  private void value(FoundField field, Map<String, String> row) {
    Proposed value = field.value();
    Optional<String> unitColumn = unitColumn(field.into(), value.column());
    Optional<Unit> unit = value.unit();
    if (unitColumn.isPresent() && unit.isPresent()) {
      String before = row.putIfAbsent(unitColumn.get(), unit.get().symbol());
      if (before != null && !before.equals(unit.get().symbol())) {
        notWritten.add(
            "Cell "
                + field.cell()
                + " ('"
                + field.words()
                + "') is in "
                + unit.get().symbol()
                + ", another of the same quantity in "
                + before
                + ". Write both in one unit.");
        return;
      }
    }
    String before = row.putIfAbsent(value.column(), value.text());
    if (before != null && !before.equals(value.text())) {
      notWritten.add(
          "Cell "
              + field.cell()
              + " ('"
              + field.words()
              + "') gives "
              + value.column()
              + " again,"
              + " where "
              + before
              + " stands. Choose one.");
    }
    row.merge(
        "place",
        (field.sheet().isEmpty() ? "" : field.sheet() + " ") + field.cell(),
        (all, one) -> all.contains(one) || all.length() > 200 ? all : all + ", " + one);
    if (value.column().equals("method")) {
      row.putIfAbsent("method_words", field.words());
    }
  }

  private Map<String, String> row(String sheet, String key, FoundField.Whose whose) {
    Map<String, String> row = rows(sheet).computeIfAbsent(key, any -> new LinkedHashMap<>());
    row.put("study_id", whose.study());
    if (!sheet.equals("studies")) {
      whose.arm().ifPresent(arm -> row.put("arm_id", arm));
    }
    if (sheet.equals("patients")) {
      whose.patient().ifPresent(patient -> row.put("patient", patient));
    }
    return row;
  }

  private static String key(FoundField field) {
    FoundField.Whose whose = field.whose();
    return switch (field.into()) {
      case "studies" -> whose.study();
      case "arms" -> whose.study() + "|" + whose.arm().orElse("");
      default -> field.rowKey();
    };
  }

  private static Optional<String> unitColumn(String into, String column) {
    return switch (into) {
      case "outcomes" -> Optional.of("unit");
      case "patients" -> column.equals("age") ? Optional.empty() : Optional.of(column + "_unit");
      default ->
          WITH_UNITS.stream()
              .filter(base -> column.startsWith(base + "_"))
              .map(base -> base + "_unit")
              .findFirst();
    };
  }

  /** The template needs a title; a sheet of a colleague has none. */
  private void titles() {
    rows("studies")
        .values()
        .forEach(
            row -> {
              String author = row.getOrDefault("first_author", "");
              String name =
                  author.isEmpty()
                      ? row.getOrDefault("study_id", "")
                      : (author + " " + row.getOrDefault("year", "")).strip();
              if (row.putIfAbsent("title", name) == null) {
                row.put(
                    "note", "The title is not known; the name of the study stands in its place.");
              }
              row.put("status", "draft");
            });
  }

  private TableFile file(String sheet) {
    Set<String> columns = new LinkedHashSet<>();
    rows(sheet).values().forEach(row -> columns.addAll(row.keySet()));
    StringBuilder out = new StringBuilder(String.join(",", columns)).append('\n');
    for (Map<String, String> row : rows(sheet).values()) {
      out.append(
              String.join(
                  ",",
                  columns.stream().map(column -> quoted(row.getOrDefault(column, ""))).toList()))
          .append('\n');
    }
    return TableFile.of(sheet + ".csv", out.toString().getBytes(StandardCharsets.UTF_8));
  }

  private static String quoted(String text) {
    boolean number = text.matches("-?\\d+(\\.\\d+)?");
    return "\"" + (number ? text : Guard.write(text)).replace("\"", "\"\"") + "\"";
  }
}
