package gapwise.server.page.untidy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.RunningServer;
import java.io.IOException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A colleague's own sheet, invented, from its file to studies. */
@Timeout(value = 2, unit = TimeUnit.MINUTES)
class UntidyPageTest {
  private static final String SHEET =
      String.join(
          "\r\n",
          "Invented papers for the talk,,,",
          "Study,Method,Patients,Primary union (n/N)",
          "Placeholder 2031,Bone transport,23,19/23 (83%)",
          "Standin 2030,Induced membrane,17,15/17 (88%)",
          "Total,,40,34/40",
          "");
  private static final Pattern SEEN = Pattern.compile("name=\"seen\" value=\"([^\"]+)\"");
  private static final Pattern KIND = Pattern.compile("name=\"kind\" value=\"([^\"]+)\"");

  @TempDir Path folder;
  private RunningServer running;

  @BeforeEach
  void open() {
    running = RunningServer.empty(folder);
  }

  @AfterEach
  void close() {
    running.close();
  }

  private HttpResponse<String> send(String path, String type, String body)
      throws IOException, InterruptedException {
    return running.send(
        running
            .request(path)
            .header("Content-Type", type)
            .POST(HttpRequest.BodyPublishers.ofString(body)));
  }

  private HttpResponse<String> form(String path, String body)
      throws IOException, InterruptedException {
    return send(path, "application/x-www-form-urlencoded", body);
  }

  private String laid() throws IOException, InterruptedException {
    String body =
        "--b\r\nContent-Disposition: form-data; name=\"sheet\"; filename=\"talk.csv\"\r\n\r\n"
            + SHEET
            + "\r\n--b--\r\n";
    HttpResponse<String> laid = send("/colleague-sheet", "multipart/form-data; boundary=b", body);
    assertEquals(303, laid.statusCode(), laid.body());
    return laid.headers().firstValue("Location").orElseThrow();
  }

  /** The page of the import once it is settled. */
  private String settled(String job) throws IOException, InterruptedException {
    String page = running.get(job).body();
    while (page.contains("hx-get=\"/import/")) {
      page = running.get(job).body();
    }
    return page;
  }

  @Test
  void whatIsReadIsShownFirstAndGoesThroughTheChecksOfTheImport()
      throws IOException, InterruptedException {
    String sheet = laid();
    String page = running.get(sheet).body();
    assertTrue(page.contains("19/23 (83%)"), page);
    assertTrue(page.contains("Set apart") && page.contains("Total"), page);
    assertEquals(422, form(sheet, "who=").statusCode(), "nobody hands it in");

    HttpResponse<String> taken = form(sheet, "who=AB");
    assertEquals(303, taken.statusCode(), taken.body());
    String job = taken.headers().firstValue("Location").orElseThrow();
    String state = settled(job);
    for (int round = 0;
        round < 3 && (state.contains("name=\"seen\"") || state.contains("name=\"kind\""));
        round++) {
      StringBuilder acknowledged = new StringBuilder("x=1");
      for (Pattern one : new Pattern[] {SEEN, KIND}) {
        Matcher found = one.matcher(state);
        while (found.find()) {
          acknowledged.append(one == SEEN ? "&seen=" : "&kind=").append(found.group(1));
        }
      }
      form(job, acknowledged.toString());
      state = settled(job);
    }
    String pooled = running.get("/pooled?outcome=primary-union").body();
    assertTrue(pooled.contains("19 of 23"), state);
    assertTrue(pooled.contains("15 of 17"), pooled);
    assertEquals(404, running.get(sheet).statusCode(), "what was taken in lies there no more");
  }

  private static final Pattern MARK = Pattern.compile("name=\"read-with\" value=\"([^\"]+)\"");

  private static String chosen(String page, String select) {
    Matcher found =
        Pattern.compile(
                "<select name=\"" + select + "\".*?<option value=\"([^\"]*)\" selected",
                Pattern.DOTALL)
            .matcher(page);
    assertTrue(found.find(), page);
    return found.group(1);
  }

  @Test
  void whatAPersonSaysOfAColumnIsReadAtOnceKeptForTheNextSheetAndForgotten()
      throws IOException, InterruptedException {
    String sheet = laid();
    String page = running.get(sheet).body();
    assertEquals("outcome:primary-union", chosen(page, "target.3"));
    Matcher mark = MARK.matcher(page);
    assertTrue(mark.find(), page);

    HttpResponse<String> changed =
        form(
            sheet + "/mapping",
            "table=0&target.3=outcome:final-union&numbers.3=COUNT%2BTOTAL&unit.3=");
    assertEquals(303, changed.statusCode(), changed.body());
    page = running.get(sheet).body();
    assertEquals("outcome:final-union", chosen(page, "target.3"));
    assertTrue(page.contains("Final union: "), page);
    assertEquals(
        409,
        form(sheet, "who=AB&read-with=" + mark.group(1)).statusCode(),
        "what was marked before is of another reading");

    String next = laid();
    page = running.get(next).body();
    assertEquals("outcome:final-union", chosen(page, "target.3"), "used for the next sheet");
    assertEquals(303, form(next + "/forget", "table=0").statusCode());
    page = running.get(next).body();
    assertEquals("outcome:primary-union", chosen(page, "target.3"), "forgotten");
    assertTrue(!page.contains("Forget it"), page);
  }

  @Test
  void aColumnLeftOutIsSetApartAndWhatIsNoneOfTheListsIsRefused()
      throws IOException, InterruptedException {
    String sheet = laid();
    assertEquals(
        422, form(sheet + "/mapping", "table=0&target.3=nonsense&numbers.3=&unit.3=").statusCode());
    assertEquals(
        422,
        form(sheet + "/mapping", "table=0&target.3=age&numbers.3=&unit.3=parsecs").statusCode());
    assertEquals(422, form(sheet + "/mapping", "table=7&target.3=age").statusCode());
    form(sheet + "/mapping", "table=0&target.3=left-out&numbers.3=&unit.3=");
    String page = running.get(sheet).body();
    assertTrue(page.contains("A person left this column out."), page);
    assertTrue(!page.contains("<td data-head=\"Read from\">“19/23"), page);
  }

  @Test
  void aSheetThatDoesNotLieThereAndNoFileAreAnsweredInWords()
      throws IOException, InterruptedException {
    assertEquals(404, running.get("/colleague-sheet/nothing").statusCode());
    assertEquals(
        422, send("/colleague-sheet", "multipart/form-data; boundary=b", "--b--\r\n").statusCode());
  }
}
