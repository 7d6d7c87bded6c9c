package gapwise.figure.timeline;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.file.CsvCell;
import gapwise.figure.file.CsvOrigin;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** The data of a timeline, in words and as CSV. */
public record TimelineTable(Timeline timeline) {
  private static final Quantity MONTHS = Quantity.mean("months");

  /** A phase as a sentence. */
  static String told(Timeline.Stretch stretch) {
    return say(
        "figure.phase",
        Map.of(
            "number",
            stretch.number(),
            "phase",
            stretch.phase(),
            "from",
            Shown.months(stretch.fromMonths()),
            "to",
            Shown.months(stretch.toMonths())));
  }

  /** A milestone of the case as a sentence. */
  static String told(Timeline.Reached reached) {
    return say(
        "figure.reached",
        Map.of("milestone", reached.milestone(), "months", Shown.months(reached.months())));
  }

  /** A pooled time as a sentence. */
  static String told(Timeline.Pooled pooled) {
    return say(
        pooled.prediction().isPresent()
            ? "figure.pooled-time-and-new-series"
            : "figure.pooled-time",
        values(pooled));
  }

  /** A pooled time in one phrase. */
  static String words(Timeline.Pooled pooled) {
    return say(
        pooled.prediction().isPresent()
            ? "figure.pooled-time-and-new-series-title"
            : "figure.pooled-time-title",
        values(pooled));
  }

  private static Map<String, Object> values(Timeline.Pooled pooled) {
    Map<String, Object> values = new HashMap<>();
    values.put("method", pooled.method().label());
    values.put("milestone", pooled.milestone());
    values.put("value", value(pooled));
    values.put("series", Integer.toString(pooled.series()));
    pooled.prediction().ifPresent(limits -> values.put("limits", Shown.limits(MONTHS, limits)));
    return values;
  }

  /** An average with its limits. */
  public static String value(Timeline.Pooled pooled) {
    return Shown.estimate(MONTHS, pooled.average());
  }

  /** Where a new series may lie, or a dash. */
  public static String prediction(Timeline.Pooled pooled) {
    return pooled.prediction().map(limits -> Shown.limits(MONTHS, limits)).orElse("\u2013");
  }

  /**
   * Phases, milestones and pooled times as CSV (RFC 4180), months from the origin named in each
   * line. Numbers carry all digits.
   */
  String csv() {
    StringBuilder out = new StringBuilder();
    List<String> names =
        Stream.concat(
                Stream.of(
                    "kind",
                    "counted-from",
                    "label",
                    "method",
                    "from-months",
                    "to-months",
                    "months",
                    "lower",
                    "upper",
                    "prediction-lower",
                    "prediction-upper",
                    "series"),
                CsvOrigin.NAMES.stream())
            .toList();
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader(names.toArray(String[]::new)).get();
    try (CSVPrinter printer = new CSVPrinter(out, format)) {
      for (Timeline.Track track : timeline.tracks()) {
        for (Timeline.Stretch one : track.course()) {
          print(
              printer,
              "phase",
              track,
              one.phase(),
              "",
              one.fromMonths(),
              one.toMonths(),
              "",
              "",
              "",
              "",
              "",
              "");
        }
        for (Timeline.Reached one : track.reached()) {
          print(
              printer,
              "case",
              track,
              one.milestone(),
              "",
              "",
              "",
              one.months(),
              "",
              "",
              "",
              "",
              "");
        }
        for (Timeline.Pooled one : track.pooled()) {
          print(
              printer,
              "pooled",
              track,
              one.milestone(),
              one.method().code(),
              "",
              "",
              one.average().value(),
              one.average().lower(),
              one.average().upper(),
              one.prediction().map(Limits::lower).map(Object::toString).orElse(""),
              one.prediction().map(Limits::upper).map(Object::toString).orElse(""),
              one.series());
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException("text in memory could not be written", e);
    }
    return out.toString();
  }

  private void print(
      CSVPrinter printer, String kind, Timeline.Track track, String label, Object... numbers)
      throws IOException {
    printer.print(kind);
    printer.print(CsvCell.text(track.origin()));
    printer.print(CsvCell.text(label));
    for (Object number : numbers) {
      printer.print(number);
    }
    for (String origin : CsvOrigin.of(timeline)) {
      printer.print(origin);
    }
    printer.println();
  }
}
