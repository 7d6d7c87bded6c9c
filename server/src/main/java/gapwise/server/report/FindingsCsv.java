package gapwise.server.report;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.certainty.Domain;
import gapwise.decision.certainty.Rating;
import gapwise.decision.findings.Finding;
import gapwise.decision.option.Column;
import gapwise.figure.file.CsvCell;
import gapwise.figure.value.Quantity;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * A summary of findings as CSV (RFC 4180): one line a number or a reason why there is none. Shares
 * are from 0 to 1; every line says of itself where it comes from.
 */
public final class FindingsCsv {
  private static final List<String> NUMBERS =
      List.of(
          "evidence",
          "aspect",
          "outcome",
          "unit",
          "method",
          "value",
          "lower",
          "upper",
          "in-words",
          "counted",
          "series",
          "new-centre-lower",
          "new-centre-upper",
          "fit-inside",
          "fit-edge",
          "fit-unknown",
          "fit-outside",
          "certainty");

  private static final List<String> ORIGIN =
      List.of(
          "reasons",
          "settled",
          "situation",
          "data-version",
          "data-date",
          "invented",
          "address",
          "cautions");

  private FindingsCsv() {}

  /** The file. */
  public static String of(FindingsDocument document) {
    StringBuilder text = new StringBuilder();
    try (CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
      List<String> heads = new ArrayList<>(NUMBERS);
      Arrays.stream(Domain.values()).map(domain -> "levels-" + domain.code()).forEach(heads::add);
      heads.addAll(ORIGIN);
      printer.printRecord(heads);
      for (Finding one : document.findings().all()) {
        printer.printRecord(line(document, one).stream().map(CsvCell::text).toList());
      }
    } catch (IOException e) {
      throw new UncheckedIOException("a text in memory cannot be written", e);
    }
    return text.toString();
  }

  private static List<String> line(FindingsDocument document, Finding one) {
    Column column = one.column();
    List<String> line =
        new ArrayList<>(
            List.of(
                one.kind().label(),
                column.aspect().label(),
                column.outcome().label(),
                column.measure().kind() == Quantity.Kind.OF_100 ? "share" : column.measure().unit(),
                one.about(),
                one.value().map(value -> Double.toString(value.value())).orElse(""),
                one.value().map(value -> limit(value.lower())).orElse(""),
                one.value().map(value -> limit(value.upper())).orElse(""),
                one.words(),
                one.counted(),
                one.series(),
                one.newCentre().map(limits -> limit(limits.lower())).orElse(""),
                one.newCentre().map(limits -> limit(limits.upper())).orElse("")));
    line.add(one.fit().map(fit -> Double.toString(fit.inside())).orElse(""));
    line.add(one.fit().map(fit -> Double.toString(fit.edge())).orElse(""));
    line.add(one.fit().map(fit -> Double.toString(fit.unknown())).orElse(""));
    line.add(one.fit().map(fit -> Double.toString(fit.outside())).orElse(""));
    line.add(one.rating().map(rating -> rating.level().label()).orElse(""));
    for (Domain domain : Domain.values()) {
      line.add(one.rating().map(rating -> Integer.toString(rating.of(domain).levels())).orElse(""));
    }
    line.add(one.rating().map(FindingsCsv::reasons).orElse(""));
    line.add(one.settled());
    Prepared prepared = document.prepared();
    line.addAll(
        List.of(
            document.situation(),
            prepared.edition().words(),
            prepared.edition().date().map(LocalDate::toString).orElse(""),
            prepared.invented() ? "yes" : "no",
            prepared.address(),
            say("findings.fence") + " " + say("findings.advice")));
    return line;
  }

  /** A limit that is not known, or lies nowhere, is left empty. */
  private static String limit(double limit) {
    return Double.isFinite(limit) ? Double.toString(limit) : "";
  }

  private static String reasons(Rating rating) {
    return rating.lowering().stream().map(FindingsWord::reason).collect(Collectors.joining(" "));
  }

  /** The unit of an outcome after its name; empty where it has none. */
  static String unit(Column column) {
    String unit =
        column.measure().kind() == Quantity.Kind.OF_100
            ? say("page.of-hundred")
            : column.measure().unit();
    return unit.isEmpty() ? "" : ", " + unit;
  }
}
