package gapwise.server.page.course;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.server.testing.SharedServer;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CoursePageTest {
  private static final JsonMapper JSON = JsonMapper.builder().build();
  private static final String FRAMED = "?outcome=time-to-union&clock=frame-on";

  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static String page(String path) throws Exception {
    HttpResponse<String> answer = running.get(path);
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body();
  }

  @Test
  void methodsAreToldOneByOneAndNotCompared() throws Exception {
    String page = page("/over-time" + FRAMED);
    assertTrue(page.contains("Bone transport in an external frame: "), page);
    assertTrue(page.contains("pooled from 4 curves of 4 studies with 74 patients"), page);
    assertTrue(page.contains("Curves side by side are no comparison"), page);
    assertTrue(page.contains("Whoever lost the limb or died"), page);
    assertTrue(page.contains("By month 6, of 100") && page.contains("By month 12, of 100"));
    assertTrue(page.contains("No curve of it has been read."), page);
    assertTrue(page.contains("Its patients overlap with those of"), page);
    assertTrue(page.contains("/studies/invented-01#curves"), page);
  }

  @Test
  void whatCameUpWhenCurvesWereRebuiltIsSaidInPlainWords() throws Exception {
    String page = page("/over-time" + FRAMED);
    String said = page.substring(page.indexOf("What came up when they were rebuilt"));
    String list = said.substring(0, said.indexOf("</ul>"));
    assertTrue(
        list.contains(
            "<li>Shorten, lengthen: these series differ no more than chance would make them. With"
                + " few series this does not show that they agree.</li>"),
        list);
    assertTrue(
        list.contains(
            "<li>Shorten, lengthen: there are too few curves for a part of this, which is left"
                + " out.</li>"),
        list);
    assertFalse(list.contains("variance") || list.contains("degrees of freedom"), list);
  }

  @Test
  void aSingleCurveIsSaidToBeOne() throws Exception {
    String page =
        page("/over-time?outcome=time-to-union&method=acute-shortening-lengthening&year-from=2020");
    assertTrue(page.contains("in the one curve there is, of 10 patients"), page);
    assertTrue(page.contains("Nothing is pooled"), page);
  }

  @Test
  void whatHasNoCurveSaysSoAndThatItIsNoFinding() throws Exception {
    String page = page("/over-time?outcome=external-fixation-time");
    assertTrue(page.contains("No curve: no figure of this time"), page);
    assertTrue(page.contains("That is no finding about the method."), page);
    assertFalse(page.contains("Take this figure"), page);
  }

  @Test
  void anOutcomeThatIsNoTimeIsSaidAndATimeOffered() throws Exception {
    String page = page("/over-time?outcome=union");
    assertTrue(page.contains("is no time to an event"), page);
    assertTrue(page.contains("href=\"/over-time?outcome=time-to-union\""), page);
    assertEquals(422, running.get("/api/v1/over-time?outcome=union").statusCode());
    HttpResponse<String> horizon = running.get("/over-time" + FRAMED + "&horizon=0");
    assertEquals(422, horizon.statusCode());
    assertTrue(horizon.body().contains("whole months from 1 to 60"), horizon.body());
  }

  @Test
  void thePooledPageOfATimeLeadsThereAndOthersDoNot() throws Exception {
    assertTrue(page("/pooled?outcome=time-to-union").contains("/over-time?outcome=time-to-union"));
    assertFalse(page("/pooled?outcome=union").contains("/over-time"));
  }

  @Test
  void pageAndProgramsSayTheSame() throws Exception {
    JsonNode answer = JSON.readTree(page("/api/v1/over-time" + FRAMED));
    assertEquals("frame-on", answer.get("clock").asText());
    JsonNode first = answer.at("/methods/0");
    assertEquals("bone-transport", first.get("method").asText());
    JsonNode share = first.at("/shares/2");
    assertEquals(12, share.get("month").asInt());
    long told = Math.round(100 * share.get("share").asDouble());
    assertTrue(
        page("/over-time" + FRAMED).contains(told + " of 100 had united by month 12"),
        answer.toString());
    assertEquals("", page("/api/v1/over-time.csv" + FRAMED).isBlank() ? "blank" : "");
  }

  @Test
  void thePlanOfAMethodGivesTheSameCurveWhenSentToTheApi() throws Exception {
    JsonNode plans = JSON.readTree(page("/api/v1/over-time-plan.json" + FRAMED));
    JsonNode first = JSON.readTree(page("/api/v1/over-time" + FRAMED)).at("/methods/0/outcome");
    HttpResponse<String> again =
        running.send(
            running
                .request("/api/v1/syntheses")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(plans.get("bone-transport").toString())));
    assertEquals(first.get("pooledCurves"), JSON.readTree(again.body()).get("pooledCurves"));
  }

  @ParameterizedTest
  @CsvSource({
    "over-time.svg, image/svg+xml",
    "over-time.png, image/png",
    "over-time.csv, text/csv",
    "over-time-plan.json, application/json",
    "over-time-result.json, application/json",
    "over-time-methods.txt, text/plain"
  })
  void filesComeWithTheirKind(String file, String kind) throws Exception {
    HttpResponse<String> answer = running.get("/api/v1/" + file + FRAMED);
    assertEquals(200, answer.statusCode());
    String found = answer.headers().firstValue("Content-Type").orElse("");
    assertTrue(found.startsWith(kind), found);
  }

  @Test
  void theStudyShowsItsCurvesWithTheirPlace() throws Exception {
    String page = page("/studies/invented-55");
    assertTrue(page.contains("Curves read off its figures"), page);
    assertTrue(page.contains("Time to union: Induced membrane"), page);
    assertTrue(page.contains("Figure 2"), page);
    assertFalse(page("/studies/invented-04").contains("Curves read off"), "none is read there");
  }
}
