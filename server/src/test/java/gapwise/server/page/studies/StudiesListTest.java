package gapwise.server.page.studies;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.server.testing.RunningServer;
import gapwise.table.TableFile;
import java.io.StringReader;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The list of studies: its columns, its values and its files. */
class StudiesListTest {
  @TempDir static Path folder;
  private static RunningServer running;

  @BeforeAll
  static void open() {
    running = RunningServer.withStudies(folder.resolve("home"));
  }

  @AfterAll
  static void close() {
    running.close();
  }

  private static List<CSVRecord> csv(String path) throws Exception {
    HttpResponse<String> answer = running.get(path);
    assertEquals(200, answer.statusCode(), answer.body());
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    return format.parse(new StringReader(answer.body())).getRecords();
  }

  @Test
  void theUsualColumnsStandWithoutBeingNamed() throws Exception {
    String page = running.get("/studies?outcome=union").body();
    assertTrue(page.contains("data-head=\"Followed\""));
    assertTrue(page.contains("<td data-head=\"Extraction\">extracted once</td>"), page);
    assertFalse(page.contains("data-head=\"Year\""));
  }

  @Test
  void columnsChosenStandInTheAddressAndStayThroughPagingSortingAndFilters() throws Exception {
    String page = running.get("/studies?outcome=union&column=year&column=bones").body();
    assertTrue(page.contains("data-head=\"Year\""));
    assertTrue(page.contains("<td data-head=\"Bones\">tibia "), page);
    assertFalse(page.contains("data-head=\"Patients\""));
    // a filter taken off and a usual size both lead on with the columns
    assertTrue(page.contains("href=\"/studies?column=year&amp;column=bones\""), page);
    assertTrue(page.contains("column=year&amp;column=bones&amp;from=4&amp;to=6"), page);
    // a pooled result has no such columns
    assertTrue(page.contains("href=\"/pooled?outcome=union\""), page);
  }

  @Test
  void theUsualColumnsSentByTheFormLeaveTheAddressShort() throws Exception {
    HttpResponse<String> answer =
        running.send(
            running
                .request(
                    "/studies?column=missing-bone&column=value&column=patients&column=followed"
                        + "&column=extraction&method=induced-membrane")
                .header("HX-Request", "true"));
    assertEquals(
        "/studies?method=induced-membrane",
        answer.headers().firstValue("HX-Push-Url").orElseThrow());
  }

  @Test
  void anUnknownColumnIsToldWithTheColumnsThereAre() throws Exception {
    HttpResponse<String> answer = running.get("/studies?column=blood");
    assertEquals(422, answer.statusCode());
    assertTrue(answer.body().contains("missing-bone"), answer.body());
    assertEquals(422, running.get("/studies.csv?column=blood").statusCode());
  }

  @Test
  void theFileHoldsWhatIsShownWithItsSelectionDateAndVersion() throws Exception {
    List<CSVRecord> rows =
        csv("/studies.csv?outcome=union&method=bone-transport&order=year-ascending&column=value");
    assertEquals(8, rows.size());
    CSVRecord first = rows.get(0);
    assertEquals("invented-00", first.get("study"));
    assertEquals("11 of 12", first.get("Union, as the paper counts it"));
    // exact limits of 11 of 12: 61.5 and 99.8 (Clopper and Pearson, Biometrika 1934;26:404; the
    // lower one solves P(X >= 11) = 0.025, the upper one is (1 - 0.025)^(1/12) = 0.9979)
    assertEquals(
        "92 in 100 (62 to 99.8)",
        first.get("Union, as the paper counts it, 95 % interval and clock"));
    assertEquals(
        "/studies?outcome=union&method=bone-transport&order=year-ascending&column=value",
        first.get("selection"));
    assertTrue(first.get("exported on").matches("\\d{4}-\\d\\d-\\d\\d"));
    assertEquals("17", first.get("evidence version"));
    assertFalse(first.isMapped("Patients"));
  }

  @Test
  void theFileHoldsEveryPageOfTheListAndItsOrder() throws Exception {
    List<CSVRecord> rows = csv("/studies.csv?order=defect-descending&page=1");
    assertEquals(16, rows.size());
    assertEquals("invented-15", rows.get(0).get("study"));
    assertEquals("57", rows.get(0).get("Patients"));
  }

  @Test
  void timesSayFromWhenTheyAreCounted() throws Exception {
    String page = running.get("/studies?outcome=time-to-union").body();
    assertTrue(page.contains("<small>SD 2, from definitive operation</small>"), page);
  }

  @Test
  void theWorkbookIsReadAgainAndSaysWhatWasSelected() throws Exception {
    Path file = folder.resolve("found.xlsx");
    HttpResponse<Path> answer =
        java.net.http.HttpClient.newHttpClient()
            .send(
                running.request("/studies.xlsx?method=induced-membrane").build(),
                BodyHandlers.ofFile(file));
    assertEquals(200, answer.statusCode());
    try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(file))) {
      String first = book.getSheetAt(0).getRow(0).getCell(0).getStringCellValue();
      assertEquals("Selection: /studies?method=induced-membrane", first);
    }
    Imported read = Import.read(TableFile.of(file), Set.of());
    int studies =
        read instanceof Imported.NeedsAcknowledgement doubtful
            ? doubtful.read().size()
            : ((Imported.Ready) read).studies().size();
    assertEquals(8, studies);
  }

  @Test
  void theBoxBesideTheLengthKeepsABandAndStudiesWithoutALength() throws Exception {
    String band = running.get("/studies?from=4&to=6&match=band").body();
    assertTrue(band.contains("name=\"match\" value=\"band\" checked"), band);
    String unsized = running.get("/studies?match=unsized").body();
    assertTrue(unsized.contains("name=\"match\" value=\"unsized\" checked"), unsized);
    // a size chosen from there asks for a size again
    assertTrue(unsized.contains("href=\"/studies?from=4&amp;to=6\""), unsized);
    String plain = running.get("/studies?from=4&to=6").body();
    assertTrue(plain.contains("name=\"match\" value=\"centre\">"), plain);
  }
}
