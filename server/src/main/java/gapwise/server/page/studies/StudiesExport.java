package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.QuestionWords;
import gapwise.evidence.Study;
import gapwise.exchange.Export;
import gapwise.figure.file.CsvCell;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchAnswer.ArmHit;
import gapwise.search.StudySearch;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.ListColumn;
import gapwise.server.address.Orders;
import gapwise.server.address.PagePaths;
import gapwise.server.address.TypedWords;
import gapwise.server.download.Attachment;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * The list of groups as files: all that was found, in the order and with the columns shown. Each
 * says what was selected, when, and from which state of the evidence base.
 */
final class StudiesExport {
  static final String CSV = PagePaths.STUDIES + ".csv";
  static final String WORKBOOK = PagePaths.STUDIES + ".xlsx";

  /** Records that a workbook holds at most, since it is made in memory. */
  private static final int MOST_STUDIES = 2000;

  /** Groups whose records are held at a time. */
  private static final int AT_A_TIME = 500;

  private final StudySearch search;
  private final PlainRows plain;
  private final ArmRows rows;
  private final Clock clock;

  StudiesExport(StudySearch search, PlainRows plain, ArmValues values, Clock clock) {
    this.plain = plain;
    this.rows = new ArmRows(plain::of, values, ArmValue::whole);
    this.search = search;
    this.clock = clock;
  }

  /** What every file says of itself. */
  private record Origin(String selection, String date, long version) {}

  void addTo(Routes routes) {
    routes.get(CSV, Right.SEE, this::csv);
    routes.get(WORKBOOK, Right.SEE, this::workbook);
  }

  private Origin origin(Address address, SearchAnswer found) {
    String filters = address.without(List.of("page")).at(PagePaths.STUDIES);
    String selection =
        QuestionWords.length(Filters.read(address))
            .map(length -> filters + " (" + length + ")")
            .orElse(filters);
    return new Origin(
        found.looseWords().map(loose -> selection + " " + loose.sentence()).orElse(selection),
        LocalDate.now(clock).toString(),
        search.change());
  }

  private SearchAnswer found(Address address) {
    return search.search(Filters.read(address), Orders.read(address), 0, Integer.MAX_VALUE);
  }

  private void csv(Context context) throws IOException {
    Address address = ListColumn.tidy(TypedWords.understood(new Address(context.queryParamMap())));
    List<ListColumn> columns = ListColumn.read(address);
    ArmRows.Question asked = ArmRows.Question.of(address, Filters.read(address));
    SearchAnswer found = found(address);
    List<ArmHit> hits = found.hits();
    Origin origin = origin(address, found);
    Attachment.announce(context, "text/csv; charset=utf-8", "studies-" + origin.version() + ".csv");
    Writer writer = new OutputStreamWriter(context.outputStream(), StandardCharsets.UTF_8);
    try (CSVPrinter printer = new CSVPrinter(writer, CSVFormat.RFC4180)) {
      printer.printRecord(heads(columns, asked));
      for (int from = 0; from < hits.size(); from += AT_A_TIME) {
        List<ArmHit> some = hits.subList(from, Math.min(hits.size(), from + AT_A_TIME));
        for (ArmRow row : rows.of(some, columns, asked)) {
          printer.printRecord(line(row, origin));
        }
      }
    }
  }

  private static List<String> heads(List<ListColumn> columns, ArmRows.Question asked) {
    List<String> heads = new ArrayList<>(List.of("study", "group", "label", "method", "detail"));
    for (ListColumn column : columns) {
      if (column != ListColumn.VALUE) {
        heads.add(column.label());
      } else if (asked.outcome().isPresent()) {
        heads.add(asked.outcome().get().label());
        heads.add(asked.outcome().get().label() + ", 95 % interval and clock");
      }
    }
    heads.addAll(List.of("selection", "exported on", "evidence version"));
    return heads;
  }

  private static List<String> line(ArmRow row, Origin origin) {
    List<String> line =
        new ArrayList<>(
            List.of(row.study(), row.armId(), row.label(), row.method().label(), row.detail()));
    for (ArmRow.Cell cell : row.cells()) {
      line.add(cell.words());
      if (cell.withFurther()) {
        line.add(cell.further());
      }
    }
    line.addAll(List.of(origin.selection(), origin.date(), Long.toString(origin.version())));
    return line.stream().map(CsvCell::text).toList();
  }

  private void workbook(Context context) throws IOException {
    Address address = TypedWords.understood(new Address(context.queryParamMap()));
    SearchAnswer found = found(address);
    Origin origin = origin(address, found);
    List<Study> studies = records(found.hits());
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    Export.workbook(studies, notes(origin), bytes);
    Attachment.send(
        context,
        "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
        "studies-" + origin.version() + ".xlsx",
        bytes.toByteArray());
  }

  private static List<String> notes(Origin origin) {
    return List.of(
        say("studies.selection", Map.of("selection", origin.selection())),
        say(
            "studies.exported",
            Map.of("date", origin.date(), "version", Long.toString(origin.version()))),
        say("studies.exported-whole"));
  }

  private List<Study> records(List<ArmHit> hits) {
    long studies = hits.stream().map(ArmHit::studyId).distinct().count();
    if (studies > MOST_STUDIES) {
      throw new WrongInputException(
          List.of(
              new Problem(
                  "",
                  "too-many-studies",
                  "A workbook holds at most "
                      + MOST_STUDIES
                      + " studies and this selection has "
                      + studies
                      + "; narrow it, or take the table (CSV), which has no limit.")));
    }
    return List.copyOf(new TreeMap<>(plain.studies(hits)).values());
  }
}
