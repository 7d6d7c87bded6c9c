package gapwise.server.download;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.server.testing.Invented;
import gapwise.server.testing.RunningServer;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.net.http.HttpClient;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Figures taken away for a talk or a paper. */
class FigureFilesTest {
  private static final Pattern HREF = Pattern.compile("href=\"([^\"]+)\" download");

  @TempDir static Path folder;
  private static RunningServer running;

  @BeforeAll
  static void open() {
    running = RunningServer.with(folder.resolve("home"), Invented.studiesWithOneThatCompares());
  }

  @AfterAll
  static void close() {
    running.close();
  }

  private static byte[] bytes(String path) throws Exception {
    return HttpClient.newHttpClient()
        .send(running.request(path).GET().build(), BodyHandlers.ofByteArray())
        .body();
  }

  @ParameterizedTest
  @CsvSource({
    "/api/v1/forest.png?outcome=union&for=slide, 1920",
    "/api/v1/forest.png?outcome=union&for=column, 1004",
    "/api/v1/by-size.png?outcome=union&for=two-columns&dpi=150, 1033",
    "/api/v1/funnel.png?outcome=union&for=a4&width-mm=400&dpi=100, 1575",
    "/map/comparisons.png?width-px=800, 800",
    "/map/comparisons.png?for=slide, 1920"
  })
  void everyFigureIsAPictureOfTheSizeAskedFor(String path, int width) throws Exception {
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(bytes(path)));
    assertEquals(width, image.getWidth(), path);
    if (path.contains("slide")) {
      assertEquals(1080, image.getHeight());
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"/api/v1/forest", "/api/v1/by-size", "/api/v1/funnel", "/map/comparisons"})
  void sizesMediaAndSheetsThatThereAreNotAreRefusedInWords(String figure) throws Exception {
    for (String wrong :
        new String[] {
          "for=poster",
          "dpi=5000",
          "dpi=many",
          "width-px=5",
          "width-px=-5",
          "width-mm=0",
          "for=column&width-mm=20",
          "sheet=99",
          "sheet=0",
          "sheet=x",
          "width-mm=1000&dpi=1200"
        }) {
      HttpResponse<String> answer = running.get(figure + ".png?outcome=union&" + wrong);
      if (figure.startsWith("/map")) {
        answer = running.get(figure + ".png?" + wrong);
      }
      assertEquals(422, answer.statusCode(), wrong + ": " + answer.body());
      assertTrue(
          answer.body().contains("expected") || answer.body().contains("sk for"), answer.body());
    }
  }

  @Test
  void theCaptionInTheFileSaysHowManyThatTheResultCounts() throws Exception {
    JsonMapper json = JsonMapper.builder().build();
    String query = "?outcome=union&method=bone-transport";
    JsonNode data = json.readTree(running.get("/api/v1/result.json" + query).body()).get("data");
    String counted =
        data.get("studies").asInt() + " series, " + data.get("participants").asInt() + " limbs";
    for (String path : new String[] {"/api/v1/forest", "/api/v1/funnel"}) {
      String svg = running.get(path + ".svg" + query + "&for=slide").body();
      assertTrue(svg.contains(counted), counted);
      assertTrue(svg.contains(data.get("sha256").asText().substring(0, 12)), path);
      String day = svg.replaceAll("(?s).*<dc:date>([-0-9]*).*", "$1");
      LocalDate today = LocalDate.now(ZoneOffset.UTC);
      assertTrue(List.of(today, today.minusDays(1)).contains(LocalDate.parse(day)), day);
      assertTrue(svg.contains("evidence base last changed on " + day + ", at change "), path);
    }
  }

  @Test
  void aDrawingAndTheListNameTheSameStudies() throws Exception {
    String query = "?outcome=union&method=bone-transport";
    String csl = running.get("/api/v1/forest-citations.json" + query).body();
    JsonNode list = JsonMapper.builder().build().readTree(csl);
    assertEquals(8, list.size(), csl);
    String svg = running.get("/api/v1/forest.svg" + query).body();
    for (JsonNode item : list) {
      assertTrue(svg.contains(item.get("title").asText()), item.toString());
    }
    String ris = running.get("/api/v1/forest-citations.ris" + query).body();
    assertEquals(9, ris.split("TY  - ", -1).length);
    assertTrue(running.get("/api/v1/forest-citations.txt" + query).body().contains("8. "));
  }

  @Test
  void theGraphOfComparisonsNamesItsStudiesAndItsState() throws Exception {
    String svg = running.get("/map/comparisons.svg").body();
    assertTrue(svg.contains("<metadata>") && svg.contains("1 study, "), svg);
    assertTrue(svg.contains("evidence base last changed on "), svg);
    String csv = running.get("/map/comparisons.csv").body();
    assertTrue(
        csv.contains(",data-version,") && csv.contains("evidence base last changed on "), csv);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/pooled?outcome=union&method=bone-transport",
        "/by-size?outcome=union&shape=curve",
        "/funnel?outcome=union",
        "/map?view=comparisons&design=randomised"
      })
  void everyLinkOfThePanelGivesAFile(String page) throws Exception {
    String body = running.get(page).body();
    assertTrue(body.contains("Take this figure"), body);
    Matcher links = HREF.matcher(body);
    int found = 0;
    while (links.find()) {
      String href = links.group(1).replace("&amp;", "&");
      HttpResponse<String> answer = running.get(href);
      assertEquals(200, answer.statusCode(), href + ": " + answer.body());
      assertTrue(
          answer.headers().firstValue("Content-Disposition").orElse("").startsWith("attachment"));
      found++;
    }
    assertTrue(found >= 11, found + " links on " + page);
  }

  @Test
  void aFunnelOfFewSeriesIsDrawnWithACautionAndWithoutATest() throws Exception {
    String page = running.get("/funnel?outcome=union&method=bone-transport").body();
    assertTrue(page.contains("fewer than 10 series"), page);
    assertTrue(page.contains("No test of unevenness: "), page);
    assertTrue(page.contains("<svg"), page);
    assertFalse(page.contains("Series of several methods"), page);
    assertTrue(running.get("/funnel?outcome=union").body().contains("Series of several methods"));
    assertTrue(
        running.get("/pooled?outcome=union").body().contains("href=\"/funnel?outcome=union\""));
  }

  @Test
  void aFunnelWithoutAnOutcomeLeadsToTheChoiceOfOne() throws Exception {
    HttpResponse<String> answer = running.get("/funnel?method=bone-transport");
    assertEquals(303, answer.statusCode());
    assertEquals(
        "/pooled?method=bone-transport", answer.headers().firstValue("Location").orElse(""));
  }

  private static HttpResponse<String> post(String path, String plan) throws Exception {
    return running.send(
        running
            .request(path)
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofString(plan.replace('\'', '"'))));
  }

  @Test
  void thePlanOfAFunnelSentToTheApiGivesTheSameDrawing() throws Exception {
    String plan = running.get("/api/v1/funnel-plan.json?outcome=union").body();
    HttpResponse<String> again = post("/api/v1/figure.svg?figure=funnel", plan);
    assertEquals(running.get("/api/v1/funnel.svg?outcome=union").body(), again.body());
  }

  @Test
  void curvesOfAPlanAreDrawnAndATableOfOnesOwnIsNotSaidToBeOfTheEvidenceBase() throws Exception {
    String plan =
        "{'title':'Time to union','task':'survival','source':{'rows':[{'time':2,'event':1},"
            + "{'time':3,'event':0},{'time':5,'event':1}]}}";
    HttpResponse<String> svg = post("/api/v1/figure.svg?for=column", plan);
    assertEquals(200, svg.statusCode(), svg.body());
    assertTrue(svg.body().contains("Kaplan-Meier"), svg.body());
    assertFalse(svg.body().contains("evidence base"), svg.body());
    String csv = post("/api/v1/figure.csv", plan).body();
    assertTrue(csv.contains("\r\nAll patients,no,2.0,0.66666"), csv);
  }

  @Test
  void aPlanThatIsWrongOrHasNothingToDrawIsRefusedInWords() throws Exception {
    assertEquals(422, post("/api/v1/figure.svg", "{'task':'magic'}").statusCode());
    String plan =
        "{'measure':'proportion','source':{'rows':[{'study':'A','events':9,'total':10},"
            + "{'study':'B','events':17,'total':20}]}}";
    HttpResponse<String> none = post("/api/v1/figure.svg?figure=curves", plan);
    assertEquals(422, none.statusCode());
    assertTrue(none.body().contains("this result has forest"), none.body());
  }
}
