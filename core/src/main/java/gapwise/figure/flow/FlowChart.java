package gapwise.figure.flow;

import gapwise.figure.Figure;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.file.CsvCell;
import gapwise.figure.file.CsvOrigin;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * What becomes of many in steps.
 *
 * @param title what is shown
 * @param sentences what it says
 * @param steps from the top down, at least two
 * @param cautions what must be known beside it
 * @param provenance where the counts come from
 */
public record FlowChart(
    String title,
    List<String> sentences,
    List<Step> steps,
    List<String> cautions,
    FigureProvenance provenance)
    implements Figure {
  /**
   * A step.
   *
   * @param main what goes on
   * @param leaving what leaves here, drawn beside it
   */
  public record Step(Box main, Optional<Box> leaving) {
    public Step {
      Objects.requireNonNull(main, "main");
      Objects.requireNonNull(leaving, "leaving");
    }
  }

  /**
   * A box.
   *
   * @param name what is counted, such as "Records screened"
   * @param count how many
   * @param parts of which kinds; empty where nothing divides it
   */
  public record Box(String name, int count, List<Part> parts) {
    public Box {
      Objects.requireNonNull(name, "name");
      parts = List.copyOf(parts);
      if (count < 0) {
        throw new IllegalArgumentException(name + ": a count must not be negative, was " + count);
      }
    }

    /** A box that nothing divides. */
    public Box(String name, int count) {
      this(name, count, List.of());
    }
  }

  /** A part of a box. */
  public record Part(String name, int count) {}

  public FlowChart {
    Objects.requireNonNull(title, "title");
    sentences = List.copyOf(sentences);
    steps = List.copyOf(steps);
    cautions = List.copyOf(cautions);
    Objects.requireNonNull(provenance, "provenance");
    if (steps.size() < 2) {
      throw new IllegalArgumentException("a flow takes two steps at least");
    }
  }

  @Override
  public String description() {
    List<String> words = new ArrayList<>();
    if (provenance.demonstration()) {
      words.add(FigureProvenance.INVENTED);
    }
    for (Step step : steps) {
      words.add(told(step.main()));
      step.leaving().ifPresent(box -> words.add(told(box)));
    }
    words.addAll(sentences);
    words.addAll(cautions);
    return String.join(" ", words);
  }

  private static String told(Box box) {
    String parts =
        box.parts().stream()
            .map(part -> part.name() + ": " + part.count())
            .collect(Collectors.joining(", "));
    return box.name() + ": " + box.count() + (parts.isEmpty() ? "." : " (" + parts + ").");
  }

  @Override
  public List<Picture> draw(Setting setting) {
    return List.of(FlowDrawing.draw(this, setting));
  }

  /** A line for each box and each part of one (RFC 4180). */
  @Override
  public String csv() {
    List<String> names = new ArrayList<>(List.of("step", "side", "box", "part", "count"));
    names.addAll(CsvOrigin.NAMES);
    StringBuilder out = new StringBuilder();
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader(names.toArray(String[]::new)).get();
    try (CSVPrinter printer = new CSVPrinter(out, format)) {
      for (int i = 0; i < steps.size(); i++) {
        print(printer, i + 1, "goes on", steps.get(i).main());
        if (steps.get(i).leaving().isPresent()) {
          print(printer, i + 1, "leaves", steps.get(i).leaving().get());
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException("text in memory could not be written", e);
    }
    return out.toString();
  }

  private void print(CSVPrinter printer, int step, String side, Box box) throws IOException {
    line(printer, step, side, box.name(), "", box.count());
    for (Part part : box.parts()) {
      line(printer, step, side, box.name(), part.name(), part.count());
    }
  }

  private void line(CSVPrinter printer, int step, String side, String box, String part, int count)
      throws IOException {
    List<Object> cells = new ArrayList<>();
    cells.add(step);
    cells.add(side);
    cells.add(CsvCell.text(box));
    cells.add(CsvCell.text(part));
    cells.add(count);
    cells.addAll(CsvOrigin.of(this));
    printer.printRecord(cells);
  }
}
