package gapwise.figure.bubble;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.file.CsvCell;
import gapwise.figure.file.CsvOrigin;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Shown;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** The data of an outcome over the length of missing bone, as CSV and in words. */
public record BubbleTable(Bubble bubble) {
  private static final List<String> COLUMNS =
      List.of(
          "kind",
          "label",
          "method",
          "length-cm",
          "length-from-cm",
          "length-to-cm",
          "length-from-to-is",
          "value",
          "lower",
          "upper",
          "prediction-lower",
          "prediction-upper",
          "patients",
          "weight-percent",
          "beyond-data",
          "citation",
          "value-is");

  /** The stretch of lengths of a series in words, such as "3 to 9 (range)"; empty if not told. */
  public String spread(Bubble.Point point) {
    return point
        .spread()
        .map(
            s ->
                say(
                    "figure.lengths",
                    Map.of(
                        "from",
                        Shown.centimetres(s.lower()),
                        "to",
                        Shown.centimetres(s.upper()),
                        "what",
                        point.spreadIs())))
        .orElse("");
  }

  /** The outcome of a series with its limits. */
  public String value(Bubble.Point point) {
    String value = Shown.value(bubble.measure(), point.value());
    return point
        .interval()
        .map(limits -> value + " (" + Shown.limits(bubble.measure(), limits) + ")")
        .orElse(value);
  }

  /** The outcome of a single patient: yes or no, or the value. */
  public String value(BubblePatient patient) {
    if (bubble.isOf100()) {
      return patient.value() > 0 ? "yes" : "no";
    }
    return Shown.value(bubble.measure(), patient.value());
  }

  /** A share of the weight in percent, or a dash. */
  public String weight(Bubble.Point point) {
    return point.weightPercent().isPresent()
        ? Shown.weightPercent(point.weightPercent().getAsDouble())
        : "\u2013";
  }

  /** The fitted value with its limits. */
  public String value(Bubble.At at) {
    return Shown.value(bubble.measure(), at.value())
        + " ("
        + Shown.limits(bubble.measure(), at.interval())
        + ")";
  }

  /** Where a new series may lie, or a dash. */
  public String prediction(Bubble.At at) {
    return at.prediction().map(p -> Shown.limits(bubble.measure(), p)).orElse("\u2013");
  }

  /**
   * Series, then points of the curve, then single patients, as CSV (RFC 4180). Numbers carry all
   * digits; what the whole figure shares stands in columns of its own in every line.
   */
  String csv() {
    StringBuilder out = new StringBuilder();
    String[] names =
        Stream.of(COLUMNS, CsvOrigin.NAMES).flatMap(List::stream).toArray(String[]::new);
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader(names).get();
    try (CSVPrinter printer = new CSVPrinter(out, format)) {
      for (Bubble.Point point : bubble.points()) {
        print(printer, point);
      }
      for (Bubble.At at : bubble.curve()) {
        print(printer, at);
      }
      for (BubblePatient patient : bubble.patients()) {
        print(printer, patient);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("text in memory could not be written", e);
    }
    return out.toString();
  }

  private void print(CSVPrinter printer, Bubble.Point point) throws IOException {
    print(
        printer,
        "series",
        CsvCell.text(point.label()),
        point.kind().code(),
        point.lengthCentimetres(),
        lower(point.spread()),
        upper(point.spread()),
        CsvCell.text(point.spreadIs()),
        point.value(),
        lower(point.interval()),
        upper(point.interval()),
        "",
        "",
        digits(point.patients()),
        digits(point.weightPercent()),
        "",
        CsvCell.text(point.citation()));
  }

  private void print(CSVPrinter printer, Bubble.At at) throws IOException {
    print(
        printer,
        "curve",
        "",
        "",
        at.lengthCentimetres(),
        "",
        "",
        "",
        at.value(),
        at.interval().lower(),
        at.interval().upper(),
        lower(at.prediction()),
        upper(at.prediction()),
        "",
        "",
        at.beyondData() ? "yes" : "no",
        "");
  }

  private void print(CSVPrinter printer, Object... own) throws IOException {
    List<Object> cells = new ArrayList<>(List.of(own));
    cells.add(CsvCell.text(bubble.axis().heading()));
    cells.addAll(CsvOrigin.of(bubble));
    printer.printRecord(cells);
  }

  private void print(CSVPrinter printer, BubblePatient patient) throws IOException {
    print(
        printer,
        "patient",
        CsvCell.text(patient.series()),
        patient.kind().code(),
        patient.lengthCentimetres(),
        "",
        "",
        "",
        patient.value(),
        "",
        "",
        "",
        "",
        "1",
        "",
        "",
        "");
  }

  private static String lower(Optional<Limits> limits) {
    return limits.map(each -> Double.toString(each.lower())).orElse("");
  }

  private static String upper(Optional<Limits> limits) {
    return limits.map(each -> Double.toString(each.upper())).orElse("");
  }

  private static String digits(OptionalDouble value) {
    return value.isPresent() ? Double.toString(value.getAsDouble()) : "";
  }
}
