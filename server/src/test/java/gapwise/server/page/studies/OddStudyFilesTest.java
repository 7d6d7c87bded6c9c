package gapwise.server.page.studies;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.StudyBuilder;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.server.testing.RunningServer;
import java.io.StringReader;
import java.net.URI;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Studies whose ids, names and texts a browser, a server or a spreadsheet would misread. */
class OddStudyFilesTest {
  private static final List<String> IDS =
      List.of(
          "../x",
          "a/b",
          "a b",
          "%2e",
          "<b>",
          ".",
          "..",
          "\u00e9",
          "a?b",
          "a#b",
          "a;b",
          "a&b=c",
          "a+b",
          "template.xlsx",
          "\ud83e\uddb4",
          "a%2Fb",
          "history",
          "\"q",
          "~2E");
  private static final Pattern LINK = Pattern.compile("href=\"(/studies/[^\"]*)\"");

  @TempDir static Path folder;
  private static RunningServer running;

  @BeforeAll
  static void open() {
    List<Study> studies = new ArrayList<>();
    for (String id : IDS) {
      studies.add(study(id, "=HYPERLINK(1)", Math.max(0, IDS.indexOf(id)), ""));
    }
    running = RunningServer.with(folder.resolve("home"), studies);
  }

  @AfterAll
  static void close() {
    running.close();
  }

  private static Study study(String id, String author, int number, String note) {
    Arm arm =
        Arm.with("A", MethodUsed.of(Method.of("autograft")))
            .label("+1+1")
            .baseline(Baseline.with().patients(20).build())
            .build();
    OutcomeReport union =
        OutcomeReport.with(
                new Scope.OneArm("A"),
                Outcome.of("union"),
                new ReportedValue.Events(EventCount.of(15, 20)))
            .counted(CountedUnit.LIMBS)
            .build();
    StudyBuilder study =
        Study.with(
                id,
                Citation.with("Title " + number).firstAuthor(author).year(2000 + number).build())
            .arms(List.of(arm))
            .outcomes(List.of(union));
    return (note.isEmpty() ? study : study.note(note)).build();
  }

  /** Follows each link as a browser does, which takes dots out of a path before it asks. */
  @ParameterizedTest
  @ValueSource(strings = {"/studies", "/pooled?outcome=union", "/api/v1/forest.svg?outcome=union"})
  void everyLinkToAStudyOfAnOddIdLeadsToIt(String page) throws Exception {
    String body = running.get(page).body();
    Set<String> reached = new TreeSet<>();
    Matcher link = LINK.matcher(body);
    while (link.find()) {
      String href = link.group(1).replace("&amp;", "&").replace("&#34;", "\"");
      String path = URI.create(running.address("/studies")).resolve(href).normalize().getRawPath();
      HttpResponse<String> answer = running.get(path);
      assertEquals(200, answer.statusCode(), href);
      Matcher year = Pattern.compile("<h1>[^<]*(20\\d\\d)").matcher(answer.body());
      assertTrue(year.find(), href);
      reached.add(IDS.get(Integer.parseInt(year.group(1)) - 2000));
    }
    assertEquals(new TreeSet<>(IDS), reached);
  }

  @Test
  void theRecordAndHistoryOfAnOddIdAreReadByTheSameAddress() throws Exception {
    for (String path : List.of("/~2E~2E", "/a~2Fb", "/~22q", "/history")) {
      assertEquals(200, running.get("/api/v1/studies" + path).statusCode(), path);
      assertEquals(200, running.get("/api/v1/studies" + path + "/history").statusCode(), path);
    }
    assertEquals(404, running.get("/api/v1/studies/~2E~2E~2E").statusCode());
  }

  @Test
  void theTableOfStudiesHoldsNothingThatASpreadsheetRuns() throws Exception {
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    List<CSVRecord> rows =
        format.parse(new StringReader(running.get("/studies.csv").body())).getRecords();
    assertEquals(IDS.size(), rows.size());
    assertTrue(rows.get(0).get("label").startsWith("'="), rows.get(0).toString());
    for (CSVRecord row : rows) {
      row.forEach(cell -> assertFalse(cell.matches("(?s)[=+@\t\r].*"), cell));
    }
  }

  @Test
  void anOlderRecordTooLongForAWorkbookIsNamedAndNotAFailure() throws Exception {
    Study old = study("old", "Fen", 1, "n".repeat(40_000));
    try (RunningServer other = RunningServer.with(folder.resolve("old"), List.of(old))) {
      HttpResponse<String> answer = other.get("/studies.xlsx");
      assertEquals(422, answer.statusCode());
      assertTrue(answer.body().contains("study old, sheet studies, column note"), answer.body());
      assertEquals(200, other.get("/studies.csv").statusCode());
      assertEquals(200, other.get("/studies/old").statusCode());
    }
  }
}
