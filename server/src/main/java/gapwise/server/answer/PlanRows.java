package gapwise.server.answer;

import gapwise.evidence.EventCount;
import gapwise.evidence.Outcome;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Summary;
import gapwise.evidence.Unit;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The rows of a selection under the roles of a plan.
 *
 * @param lines rows that have the numbers which the measure needs, in the order of the selection
 * @param otherForm rows whose numbers have another form than the measure needs
 */
record PlanRows(List<Line> lines, List<SelectedRow> otherForm) {
  /** One row with its cells by role. */
  record Line(SelectedRow row, Map<String, String> cells) {}

  PlanRows {
    lines = List.copyOf(lines);
    otherForm = List.copyOf(otherForm);
  }

  /** The measure in which an outcome is pooled; empty where it is listed only. */
  static Optional<String> measure(Outcome outcome) {
    return switch (outcome.kind()) {
      case EVENT, CATEGORIES -> Optional.of("proportion");
      case TIME, QUANTITY, COUNT, SCORE -> Optional.of("mean");
      case COST, PHASE -> Optional.empty();
    };
  }

  static PlanRows of(Selection selection, String measure) {
    List<Line> lines = new ArrayList<>();
    List<SelectedRow> others = new ArrayList<>();
    for (SelectedRow row : selection.rows()) {
      Optional<Map<String, String>> numbers = numbers(selection.question().outcome(), row, measure);
      if (numbers.isPresent()) {
        lines.add(new Line(row, cells(row, numbers.get())));
      } else {
        others.add(row);
      }
    }
    return new PlanRows(lines, others);
  }

  private static Map<String, String> cells(SelectedRow row, Map<String, String> numbers) {
    Map<String, String> cells = new LinkedHashMap<>();
    cells.put("study", row.label());
    row.study().citation().year().ifPresent(year -> cells.put("year", String.valueOf(year)));
    cells.put("method", row.arm().method().principal().code());
    row.defect()
        .ifPresent(
            defect -> put(cells, "defectLengthCentimetres", defect.length().centreCentimetres()));
    cells.putAll(numbers);
    return cells;
  }

  private static Optional<Map<String, String>> numbers(
      Outcome outcome, SelectedRow row, String measure) {
    ReportedValue value = row.value();
    return switch (measure) {
      case "proportion" -> counts(value);
      case "mean" ->
          value instanceof ReportedValue.Quantity quantity
              ? Optional.of(summary(outcome, row, quantity.summary()))
              : Optional.empty();
      case "incidence-rate" ->
          value instanceof ReportedValue.Rate rate ? Optional.of(rate(rate)) : Optional.empty();
      default -> Optional.empty();
    };
  }

  private static Optional<Map<String, String>> counts(ReportedValue value) {
    if (value instanceof ReportedValue.Events events && events.count().isComplete()) {
      EventCount count = events.count();
      return Optional.of(
          Map.of(
              "events", String.valueOf(count.events().getAsInt()),
              "total", String.valueOf(count.total().getAsInt())));
    }
    if (value instanceof ReportedValue.Categories categories && categories.sum() > 0) {
      int well =
          categories.counts().stream()
              .filter(category -> isGoodOrBetter(category.name()))
              .mapToInt(ReportedValue.Category::count)
              .sum();
      return Optional.of(
          Map.of("events", String.valueOf(well), "total", String.valueOf(categories.sum())));
    }
    return Optional.empty();
  }

  /** Ordered results are pooled as "good or excellent", the usual cut (common practice). */
  private static boolean isGoodOrBetter(String category) {
    String name = category.toLowerCase(Locale.ROOT);
    return name.contains("excellent") || name.contains("good");
  }

  private static Map<String, String> rate(ReportedValue.Rate rate) {
    return Map.of(
        "events", String.valueOf(rate.events()),
        "personTime", String.valueOf(rate.unit().to(Unit.YEARS, rate.personTime())));
  }

  private static Map<String, String> summary(Outcome outcome, SelectedRow row, Summary reported) {
    Summary s = outcome.unit().map(unit -> carried(reported, unit)).orElse(reported);
    Map<String, String> cells = new LinkedHashMap<>();
    OptionalInt n = s.n().isPresent() ? s.n() : row.speaksOf();
    n.ifPresent(number -> cells.put("n", String.valueOf(number)));
    put(cells, "mean", s.mean());
    put(cells, "sd", s.standardDeviation());
    put(cells, "median", s.median());
    put(cells, "q1", s.lowerQuartile());
    put(cells, "q3", s.upperQuartile());
    put(cells, "min", s.minimum());
    put(cells, "max", s.maximum());
    return cells;
  }

  private static Summary carried(Summary summary, Unit unit) {
    return summary.unit().dimension() == unit.dimension() ? summary.in(unit) : summary;
  }

  private static void put(Map<String, String> cells, String role, OptionalDouble value) {
    if (value.isPresent()) {
      cells.put(role, String.valueOf(value.getAsDouble()));
    }
  }
}
