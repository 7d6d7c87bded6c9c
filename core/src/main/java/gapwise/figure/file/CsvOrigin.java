package gapwise.figure.file;

import gapwise.figure.Figure;
import gapwise.figure.FigureProvenance;
import java.util.List;

/**
 * What every line of a figure's CSV says of the figure, so that a line copied elsewhere still tells
 * where it comes from. Columns rather than lines of comment, which RFC 4180 does not know.
 */
public final class CsvOrigin {
  public static final List<String> NAMES =
      List.of(
          "figure",
          "groups",
          "studies",
          "participants",
          "model",
          "data-version",
          "data-date",
          "invented",
          "cautions");

  private CsvOrigin() {}

  public static List<String> of(Figure figure) {
    FigureProvenance from = figure.provenance();
    return List.of(
        CsvCell.text(figure.title()),
        Integer.toString(from.series().groups()),
        Integer.toString(from.series().studies()),
        CsvCell.text(from.participants()),
        CsvCell.text(from.model()),
        CsvCell.text(from.dataVersion()),
        from.dataDate().map(date -> date.toString()).orElse(""),
        from.demonstration() ? "yes" : "no",
        CsvCell.text(String.join(" ", figure.cautions())));
  }
}
