package gapwise.figure.network;

import gapwise.figure.drawing.Svg;
import gapwise.figure.file.CsvCell;
import gapwise.figure.file.CsvOrigin;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * The data of a network graph as rows, for a table beside it and as CSV.
 *
 * @param lines treatments, then pairs
 */
record NetworkGraphTable(NetworkGraph graph, List<Line> lines) {

  /**
   * One line.
   *
   * @param treatment the treatment, or the first of a pair
   * @param against the second of a pair; empty for a treatment
   * @param patients of a treatment; empty where unknown and for pairs
   */
  record Line(String treatment, String against, OptionalDouble patients, int studies) {}

  NetworkGraphTable {
    lines = List.copyOf(lines);
  }

  /** The table of a graph. */
  static NetworkGraphTable of(NetworkGraph graph) {
    List<Line> lines = new ArrayList<>();
    for (NetworkGraph.Node node : graph.nodes()) {
      lines.add(new Line(node.treatment(), "", node.patients(), node.studies()));
    }
    for (NetworkGraph.Edge edge : graph.edges()) {
      lines.add(new Line(edge.one(), edge.other(), OptionalDouble.empty(), edge.studies()));
    }
    return new NetworkGraphTable(graph, lines);
  }

  /**
   * The table as CSV (RFC 4180), first line names; what the whole figure shares stands in columns
   * of its own.
   */
  String csv() {
    List<String> names = new ArrayList<>(List.of("treatment", "against", "patients", "studies"));
    names.addAll(CsvOrigin.NAMES);
    List<String> origin = CsvOrigin.of(graph);
    StringBuilder text = new StringBuilder();
    try (CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
      printer.printRecord(names);
      for (Line line : lines) {
        String patients = line.patients().isEmpty() ? "" : Svg.n(line.patients().getAsDouble());
        List<Object> cells = new ArrayList<>();
        cells.add(CsvCell.text(line.treatment()));
        cells.add(CsvCell.text(line.against()));
        cells.add(patients);
        cells.add(line.studies());
        cells.addAll(origin);
        printer.printRecord(cells);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("the table could not be written to memory", e);
    }
    return text.toString();
  }
}
