package gapwise.server.page.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.server.home.Home;
import gapwise.server.testing.Invented;
import gapwise.server.web.WebServer;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A sheet over an evidence base of which a publication was retracted. */
class RetractedSheetTest {
  private static final String ASKED =
      "/sheet?whole=yes&method=bone-transport&method=induced-membrane&aspect=union";

  /** Numbers of the page for the team. */
  private static final Pattern NUMBERS = Pattern.compile("<td data-head=[^>]*>.*?</td>");

  @TempDir private Path folder;

  private String sheet(String home, List<Study> studies) throws Exception {
    try (Home open = Home.open(folder.resolve(home), Clock.systemUTC())) {
      open.base().saveAll(studies.iterator(), "reviewer", "for a test", List.of());
      try (WebServer server = WebServer.start(open, "127.0.0.1", 0, "test")) {
        HttpResponse<String> answer =
            HttpClient.newHttpClient()
                .send(
                    HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + server.port() + ASKED))
                        .build(),
                    HttpResponse.BodyHandlers.ofString());
        assertEquals(200, answer.statusCode(), answer.body());
        return answer.body().replaceAll("[\\s\u00a0]+", " ");
      }
    }
  }

  private static List<String> numbers(String sheet) {
    return NUMBERS
        .matcher(sheet.substring(sheet.indexOf("<section class=\"sheet team")))
        .results()
        .map(one -> one.group())
        .toList();
  }

  private static String sources(String sheet) {
    String from = sheet.substring(sheet.indexOf("Studies behind the numbers:"));
    return from.substring(0, from.indexOf("</p>"));
  }

  @Test
  void itCountsInNoNumberAndTheSheetSaysSoByItsName() throws Exception {
    List<Study> all = Invented.studies();
    Study gone =
        all.stream()
            .filter(one -> one.arms().size() == 1)
            .filter(one -> one.arms().get(0).method().principal().code().equals("bone-transport"))
            .findFirst()
            .orElseThrow();
    List<Study> without = new ArrayList<>(all);
    without.remove(gone);
    List<Study> retracted = new ArrayList<>(without);
    retracted.add(gone.but().reportKind(ReportKind.RETRACTION).build());

    String whole = sheet("whole", all);
    String marked = sheet("marked", retracted);
    String less = sheet("less", without);

    assertEquals(numbers(less), numbers(marked));
    assertFalse(numbers(whole).equals(numbers(marked)));
    assertFalse(sources(marked).contains("/studies/" + gone.id() + "\""), sources(marked));
    assertTrue(
        sources(marked).contains("Retracted publications never count; 1 is left out for it here: "),
        sources(marked));
    assertTrue(sources(marked).contains(gone.citation().label()), sources(marked));
    assertTrue(
        sources(whole).contains("Retracted publications never count, and none is among those"),
        sources(whole));
  }
}
