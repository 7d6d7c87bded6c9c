package gapwise.server.page.screening;

import gapwise.figure.file.CsvCell;
import gapwise.reference.Reference;
import gapwise.reference.kept.KeptLine;
import gapwise.screening.Choice;
import gapwise.screening.Stage;
import gapwise.screening.Standing;
import gapwise.server.home.Screening;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** The table of what was left out, with the stage and the reason (PRISMA 2020, item 16b). */
final class LeftOutCsv {
  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180
          .builder()
          .setHeader(
              "reference",
              "title",
              "year",
              "doi",
              "pmid",
              "stage",
              "choice",
              "reason",
              "settled_by")
          .get();

  private LeftOutCsv() {}

  static byte[] of(Screening.Shown shown) {
    StringBuilder out = new StringBuilder();
    try (CSVPrinter printer = new CSVPrinter(out, FORMAT)) {
      for (Stage stage : Stage.values()) {
        for (String id : shown.board().papers(stage)) {
          if (shown.board().standing(stage, id) instanceof Standing.Decided decided
              && !decided.choice().keeps()) {
            KeptLine line = shown.shelf().line(id).orElseThrow();
            print(printer, line, stage, decided);
          }
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException("text in memory could not be written", e);
    }
    return out.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static void print(
      CSVPrinter printer, KeptLine line, Stage stage, Standing.Decided decided) throws IOException {
    Reference brief = line.brief();
    printer.printRecord(
        line.id(),
        CsvCell.text(brief.titles().main()),
        brief.published().year().isPresent() ? brief.published().year().getAsInt() : "",
        CsvCell.text(brief.identifiers().doi().map(Object::toString).orElse("")),
        CsvCell.text(brief.identifiers().pmid().map(Object::toString).orElse("")),
        stage.label(),
        decided.choice() == Choice.NOT_HAD ? Choice.NOT_HAD.label() : Choice.EXCLUDE.label(),
        CsvCell.text(decided.reason().orElse("")),
        CsvCell.text(decided.ruling().map(ruling -> ruling.who().name()).orElse("")));
  }
}
