package gapwise.exchange;

import gapwise.problem.Problem;
import gapwise.table.TableFile;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** A small invented study in the template, sound until a test spoils a cell. Rows count from 0. */
final class FilledTemplate {
  private final Map<String, List<Map<String, String>>> sheets = new LinkedHashMap<>();

  private FilledTemplate() {}

  static FilledTemplate sound() {
    FilledTemplate template = new FilledTemplate();
    Export.sheets().forEach(sheet -> template.sheets.put(sheet, new ArrayList<>()));
    template.add(
        "studies",
        "study_id=s1",
        "title=Invented series",
        "first_author=Example",
        "year=2015",
        "union_definition=three of four cortices bridged",
        "union_definition_kinds=three-cortices");
    template.add(
        "arms", "study_id=s1", "arm_id=A", "method=bone-transport", "patients=20", "limbs=20");
    template.add(
        "arms", "study_id=s1", "arm_id=B", "method=induced-membrane", "patients=18", "limbs=18");
    template.add("outcomes", "study_id=s1", "arm_id=A", "outcome=union", "events=18", "total=20");
    template.add("outcomes", "study_id=s1", "arm_id=B", "outcome=union", "events=15", "total=18");
    template.add(
        "outcomes",
        "study_id=s1",
        "arm_id=A",
        "outcome=time-to-union",
        "mean=9",
        "sd=2",
        "unit=months",
        "clock=frame-on");
    template.add(
        "outcomes",
        "study_id=s1",
        "arm_id=B",
        "outcome=time-to-union",
        "mean=10",
        "sd=2.5",
        "unit=months",
        "clock=first-stage");
    template.add("patients", "study_id=s1", "arm_id=A", "patient=case 1", "union=yes");
    return template;
  }

  /** Adds a row. */
  FilledTemplate add(String sheet, String... cells) {
    sheets.get(sheet).add(new LinkedHashMap<>());
    return set(sheet, sheets.get(sheet).size() - 1, cells);
  }

  /** Writes cells, each as {@code column=text}. */
  FilledTemplate set(String sheet, int row, String... cells) {
    for (String cell : cells) {
      int equals = cell.indexOf('=');
      sheets.get(sheet).get(row).put(cell.substring(0, equals), cell.substring(equals + 1));
    }
    return this;
  }

  FilledTemplate without(String sheet) {
    sheets.remove(sheet);
    return this;
  }

  /** Without outcomes of the second arm, so that it may go. */
  FilledTemplate withoutB() {
    sheets.get("outcomes").removeIf(row -> "B".equals(row.get("arm_id")));
    return this;
  }

  FilledTemplate withoutRows(String sheet) {
    sheets.get(sheet).clear();
    add(sheet, "study_id=# no rows", "arm_id=");
    return this;
  }

  List<TableFile> files() {
    List<TableFile> files = new ArrayList<>();
    sheets.forEach(
        (name, rows) -> {
          if (!rows.isEmpty()) {
            files.add(file(name, rows));
          }
        });
    return files;
  }

  private static TableFile file(String name, List<Map<String, String>> rows) {
    Set<String> columns = new LinkedHashSet<>();
    rows.forEach(row -> columns.addAll(row.keySet()));
    StringBuilder text = new StringBuilder(String.join(",", columns)).append("\r\n");
    for (Map<String, String> row : rows) {
      text.append(
              columns.stream()
                  .map(column -> '"' + row.getOrDefault(column, "").replace("\"", "\"\"") + '"')
                  .collect(Collectors.joining(",")))
          .append("\r\n");
    }
    return TableFile.of(name + ".csv", text.toString().getBytes(StandardCharsets.UTF_8));
  }

  Imported read() {
    return Import.read(files(), Set.of(), rows -> {});
  }

  /** Everything wrong or doubtful, wrong things first. */
  List<Problem> found() {
    List<Problem> found = new ArrayList<>();
    Imported read = read();
    if (read instanceof Imported.Wrong wrong) {
      found.addAll(wrong.problems());
    }
    read.warnings().forEach(warning -> found.add(warning.problem()));
    return found;
  }
}
