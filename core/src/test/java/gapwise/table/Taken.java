package gapwise.table;

import gapwise.problem.Problem;
import gapwise.problem.Problems;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Everything that one reading gave, for a test to look at. */
class Taken implements SheetConsumer {
  final List<Header> headers = new ArrayList<>();
  final List<Row> rows = new ArrayList<>();
  final List<String> ended = new ArrayList<>();
  final Problems problems = new Problems();

  static Taken fromCsv(String text) {
    return from(TableFile.of("arm.csv", text.getBytes(StandardCharsets.UTF_8)));
  }

  static Taken from(TableFile... files) {
    Taken taken = new Taken();
    new TableReader().read(List.of(files), taken.problems, taken);
    return taken;
  }

  static Taken from(Path path) {
    Taken taken = new Taken();
    new TableReader().read(path, taken.problems, taken);
    return taken;
  }

  @Override
  public void begin(Header header) {
    headers.add(header);
  }

  @Override
  public void row(Row row) {
    rows.add(row);
  }

  @Override
  public void end(Header header) {
    ended.add(header.sheet());
  }

  /** The texts of each row. */
  List<List<String>> texts() {
    return rows.stream().map(row -> row.cells().stream().map(Cell::text).toList()).toList();
  }

  List<String> codes() {
    return problems.list().stream().map(Problem::code).toList();
  }

  Problem onlyProblem() {
    List<Problem> found = problems.list();
    if (found.size() != 1) {
      throw new AssertionError("expected one problem, found " + found);
    }
    return found.get(0);
  }
}
