package gapwise.decision.choice;

import gapwise.answer.Cited;
import gapwise.answer.Edition;
import gapwise.decision.option.Column;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.value.SeriesCount;
import gapwise.selection.SelectedRow;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What the figures of this room share: marks, and where their numbers come from. */
final class ChoiceFigures {
  private ChoiceFigures() {}

  static MethodMark mark(Method method) {
    return new MethodMark(method.code(), method.shortLabel(), method.mark(), method.colour());
  }

  /** Each group once, however many of its outcomes enter. */
  static FigureProvenance provenance(
      List<Column> columns, List<Method> methods, String model, Edition edition) {
    List<SelectedRow> rows =
        columns.stream()
            .flatMap(column -> column.rows().stream())
            .filter(row -> methods.contains(row.arm().method().principal()))
            .toList();
    Map<List<String>, SelectedRow> groups = new LinkedHashMap<>();
    rows.forEach(row -> groups.putIfAbsent(List.of(row.study().id(), row.arm().id()), row));
    long studies = rows.stream().map(row -> row.study().id()).distinct().count();
    return new FigureProvenance(
            new SeriesCount(groups.size(), (int) studies),
            "",
            model,
            edition.words(),
            edition.date(),
            rows.stream().anyMatch(row -> row.study().invented()))
        .citing(Cited.of(rows));
  }
}
