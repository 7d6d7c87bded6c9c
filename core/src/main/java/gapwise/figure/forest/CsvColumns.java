package gapwise.figure.forest;

import gapwise.figure.file.CsvCell;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;

/** The columns of a figure's CSV, in order. */
enum CsvColumns {
  KIND((forest, line) -> line.kind().name().toLowerCase(Locale.ROOT).replace('_', '-')),
  BLOCK((forest, line) -> CsvCell.text(line.block())),
  LABEL((forest, line) -> CsvCell.text(line.label())),
  DETAIL((forest, line) -> CsvCell.text(line.detail())),
  MISSING_BONE((forest, line) -> CsvCell.text(line.missingBone())),
  COUNTS((forest, line) -> CsvCell.text(line.counts())),
  ESTIMATE((forest, line) -> line.estimate().map(e -> digits(e.value())).orElse("")),
  LOWER((forest, line) -> line.interval().map(e -> digits(e.lower())).orElse("")),
  UPPER((forest, line) -> line.interval().map(e -> digits(e.upper())).orElse("")),
  PREDICTION_LOWER((forest, line) -> prediction(line).map(p -> digits(p.lower())).orElse("")),
  PREDICTION_UPPER((forest, line) -> prediction(line).map(p -> digits(p.upper())).orElse("")),
  WEIGHT_PERCENT((forest, line) -> digits(line.weightPercent())),
  SHOWN((forest, line) -> CsvCell.text(line.shown())),
  SHOWN_PREDICTION((forest, line) -> CsvCell.text(line.shownPrediction())),
  CITATION((forest, line) -> CsvCell.text(line.citation())),
  FIGURE((forest, line) -> CsvCell.text(forest.heading().title())),
  MEASURE((forest, line) -> CsvCell.text(measure(forest.measure()))),
  GROUPS_POOLED((forest, line) -> Integer.toString(forest.provenance().series().groups())),
  STUDIES_POOLED((forest, line) -> Integer.toString(forest.provenance().series().studies())),
  PARTICIPANTS((forest, line) -> CsvCell.text(forest.provenance().participants())),
  MODEL((forest, line) -> CsvCell.text(forest.provenance().model())),
  DATA_VERSION((forest, line) -> CsvCell.text(forest.provenance().dataVersion())),
  DATA_DATE((forest, line) -> forest.provenance().dataDate().map(d -> d.toString()).orElse("")),
  INVENTED((forest, line) -> forest.provenance().demonstration() ? "yes" : "no"),
  CAUTIONS((forest, line) -> CsvCell.text(String.join(" ", forest.cautions()))),
  NOTES((forest, line) -> CsvCell.text(String.join(" ", forest.notes())));

  private final BiFunction<Forest, ForestTable.Line, String> cell;

  CsvColumns(BiFunction<Forest, ForestTable.Line, String> cell) {
    this.cell = cell;
  }

  static String[] names() {
    String[] names = new String[values().length];
    for (CsvColumns column : values()) {
      names[column.ordinal()] = column.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
    return names;
  }

  static Object[] cells(Forest forest, ForestTable.Line line) {
    Object[] cells = new Object[values().length];
    for (CsvColumns column : values()) {
      cells[column.ordinal()] = column.cell.apply(forest, line);
    }
    return cells;
  }

  private static Optional<Limits> prediction(ForestTable.Line line) {
    return line.prediction();
  }

  private static String measure(Quantity measure) {
    String kind = measure.kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
    return measure.unit().isBlank() ? kind : kind + ", " + measure.unit();
  }

  private static String digits(OptionalDouble value) {
    return value.isPresent() ? digits(value.getAsDouble()) : "";
  }

  private static String digits(double value) {
    return Double.toString(value);
  }
}
