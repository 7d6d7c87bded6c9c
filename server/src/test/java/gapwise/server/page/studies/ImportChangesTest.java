package gapwise.server.page.studies;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.RunningServer;
import java.net.URLEncoder;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Differences on the page of an import. All studies are invented. */
@Timeout(120)
class ImportChangesTest {
  private static final String BOUNDARY = "invented-4c2a";
  private static final Pattern TICK = Pattern.compile("name=\"change\" value=\"([0-9a-f]+)\"");
  private static final Pattern ALL = Pattern.compile("name=\"all-changes\" value=\"([0-9a-f]+)\"");

  @TempDir Path folder;
  private RunningServer running;

  @BeforeEach
  void start() throws Exception {
    running = RunningServer.empty(folder);
    assertTrue(page(handIn(titles("Quiet roads", "Old bridges"))).contains("2 studies added"));
  }

  @AfterEach
  void stop() {
    running.close();
  }

  private static String titles(String first, String second) {
    return "study_id,title\r\na," + first + "\r\nb," + second + "\r\n";
  }

  /** Address of the page of an import of two invented studies. */
  private String handIn(String studies) throws Exception {
    String arms = "study_id,arm_id,method\r\na,A,autograft\r\nb,A,autograft\r\n";
    String body =
        part("who\"\r\n\r\n", "AB")
            + part("files\"; filename=\"studies.csv\"\r\n\r\n", studies)
            + part("files\"; filename=\"arms.csv\"\r\n\r\n", arms)
            + "--"
            + BOUNDARY
            + "--\r\n";
    HttpResponse<String> taken =
        running.send(
            running
                .request("/import")
                .header("Content-Type", "multipart/form-data; boundary=" + BOUNDARY)
                .POST(HttpRequest.BodyPublishers.ofString(body)));
    assertEquals(303, taken.statusCode(), taken.body());
    return taken.headers().firstValue("Location").orElseThrow();
  }

  private static String part(String head, String content) {
    return "--"
        + BOUNDARY
        + "\r\nContent-Disposition: form-data; name=\""
        + head
        + content
        + "\r\n";
  }

  /** The page when there is no more to come by itself. */
  private String page(String address) throws Exception {
    String page = running.get(address).body();
    while (page.contains("hx-get=\"" + address)) {
      page = running.get(address).body();
    }
    return page;
  }

  private String tick(String address, String... fields) throws Exception {
    StringBuilder form = new StringBuilder();
    for (int at = 0; at < fields.length; at += 2) {
      form.append(at == 0 ? "" : "&")
          .append(fields[at])
          .append('=')
          .append(URLEncoder.encode(fields[at + 1], StandardCharsets.UTF_8));
    }
    running.send(
        running
            .request(address)
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(form.toString())));
    return page(address);
  }

  private static List<String> ticks(String page) {
    return TICK.matcher(page).results().map(found -> found.group(1)).toList();
  }

  private boolean says(String study, String title) throws Exception {
    return running.get("/studies/" + study).body().contains(title);
  }

  @Test
  void eachFieldThatDiffersIsShownAndNothingIsReplacedWithoutATick() throws Exception {
    String address = handIn(titles("Loud roads", "New bridges"));
    String page = page(address);
    assertTrue(page.contains("2 studies stand here with other content"), page);
    assertTrue(page.contains("<td data-head=\"Here now\">Quiet roads</td>"), page);
    assertTrue(page.contains("<td data-head=\"In the file\">Loud roads</td>"), page);
    assertEquals(2, ticks(page).size());
    String again = tick(address);
    assertTrue(again.contains("2 studies stand here with other content"), again);
    assertTrue(says("a", "Quiet roads"));

    String one = tick(address, "change", ticks(page).get(0));
    assertEquals(List.of(ticks(page).get(1)), ticks(one), "what was ticked is not asked again");
    String done = tick(address, "change", ticks(one).get(0));
    assertTrue(done.contains("2 studies added or changed"), done);
    assertTrue(says("a", "Loud roads") && says("b", "New bridges"));
  }

  @Test
  void oneTickServesAllAndAllThatDiffersIsATable() throws Exception {
    String address = handIn(titles("Loud roads", "New bridges"));
    String page = page(address);
    assertEquals(
        "study_id,sheet,row,column,before,after\r\n"
            + "a,studies,,title,Quiet roads,Loud roads\r\n"
            + "b,studies,,title,Old bridges,New bridges\r\n",
        running.get(address + "/changes.csv").body());
    Matcher all = ALL.matcher(page);
    assertTrue(all.find(), page);
    assertTrue(tick(address, "all-changes", "0").contains("2 studies stand here"), "not any tick");
    String done = tick(address, "all-changes", all.group(1));
    assertTrue(done.contains("2 studies added or changed"), done);
    assertEquals(404, running.get(address + "/changes.csv").statusCode());
  }

  @Test
  void whatIsNotTickedMayBeLeftAsItStands() throws Exception {
    String address = handIn(titles("Loud roads", "New bridges"));
    String done = tick(address, "change", ticks(page(address)).get(0), "others", "leave");
    assertTrue(done.contains("1 study added or changed"), done);
    assertTrue(done.contains("1 study was left as it stands here"), done);
    assertTrue(says("a", "Loud roads") && says("b", "Old bridges"));
  }

  @Test
  void aBaseThatChangedMeanwhileIsAskedAboutAnew() throws Exception {
    String address = handIn(titles("Loud roads", "Old bridges"));
    List<String> seen = ticks(page(address));
    String other = handIn(titles("Still roads", "Old bridges"));
    tick(other, "change", ticks(page(other)).get(0));
    assertTrue(says("a", "Still roads"));
    String again = tick(address, "change", seen.get(0));
    assertTrue(again.contains("<td data-head=\"Here now\">Still roads</td>"), again);
    assertFalse(ticks(again).contains(seen.get(0)));
    assertTrue(says("a", "Still roads"));
  }

  @Test
  void programsAreToldTheSameAndReplaceByKey() throws Exception {
    String body =
        part("who\"\r\n\r\n", "AB")
            + part("files\"; filename=\"studies.csv\"\r\n\r\n", titles("Loud roads", "Old bridges"))
            + part(
                "files\"; filename=\"arms.csv\"\r\n\r\n",
                "study_id,arm_id,method\r\na,A,autograft\r\nb,A,autograft\r\n");
    String asked = api(body);
    Matcher key = Pattern.compile("\"key\":\"([0-9a-f]{16})\",\"study\":\"a\"").matcher(asked);
    assertTrue(key.find(), asked);
    assertTrue(asked.contains("\"before\":\"Quiet roads\",\"after\":\"Loud roads\""), asked);
    String done = api(body + part("replace\"\r\n\r\n", key.group(1)));
    assertTrue(done.contains("\"state\":\"done\""), done);
    assertTrue(done.contains("\"changed\":[\"a\"]"), done);
  }

  private String api(String body) throws Exception {
    HttpResponse<String> taken =
        running.send(
            running
                .request("/api/v1/imports")
                .header("Content-Type", "multipart/form-data; boundary=" + BOUNDARY)
                .POST(HttpRequest.BodyPublishers.ofString(body + "--" + BOUNDARY + "--\r\n")));
    String address = taken.headers().firstValue("Location").orElseThrow();
    String state = running.get(address).body();
    while (state.contains("\"reading\"")) {
      state = running.get(address).body();
    }
    return state;
  }
}
