package gapwise.server.page.extraction;

import gapwise.exchange.TemplateColumn;
import gapwise.extraction.Difference;
import gapwise.extraction.FieldChoice;
import gapwise.extraction.Reconciliation;
import gapwise.figure.file.CsvCell;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Where two people differed on a paper, and who settled it and why, as a table. */
final class DifferencesCsv {
  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180
          .builder()
          .setHeader(
              "study",
              "sheet",
              "row",
              "column",
              "first_reader",
              "first_value",
              "second_reader",
              "second_value",
              "taken",
              "value",
              "reason",
              "settled_by",
              "settled_on")
          .get();

  private DifferencesCsv() {}

  static String of(Reconciliation both) {
    StringBuilder out = new StringBuilder();
    try (CSVPrinter printer = new CSVPrinter(out, FORMAT)) {
      for (Difference one : both.compared().differences()) {
        Optional<FieldChoice> choice = both.choice(one);
        printer.printRecord(
            CsvCell.text(both.paper().study()),
            one.pair().sheet(),
            CsvCell.text(String.join(", ", one.pair().named())),
            one.column().map(TemplateColumn::name).orElse(""),
            CsvCell.text(both.paper().first().name()),
            CsvCell.text(one.first().text()),
            CsvCell.text(both.paper().second().name()),
            CsvCell.text(one.second().text()),
            choice.map(it -> it.taken().name().toLowerCase(Locale.ROOT)).orElse(""),
            CsvCell.text(choice.map(FieldChoice::value).orElse("")),
            CsvCell.text(choice.map(FieldChoice::why).orElse("")),
            CsvCell.text(choice.map(it -> it.who().name()).orElse("")),
            choice.map(it -> it.when().toString()).orElse(""));
      }
    } catch (IOException e) {
      throw new UncheckedIOException("text in memory could not be written", e);
    }
    return out.toString();
  }
}
