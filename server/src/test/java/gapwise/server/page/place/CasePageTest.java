package gapwise.server.page.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.server.testing.SharedServer;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class CasePageTest {
  private static final String UNION = "&union=8&union-from=definitive-operation";

  @RegisterExtension static final SharedServer running = SharedServer.withStudies();

  private static String page(String query) throws Exception {
    HttpResponse<String> answer = running.get("/case" + query);
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body();
  }

  @Test
  void theEmptyFormSaysThatNothingIsStoredAndIsInTheNavigation() throws Exception {
    String page = page("");
    assertTrue(page.contains("Nothing is stored here"));
    assertTrue(page.contains("href=\"/case\" aria-current=\"page\""), page);
    assertFalse(page.contains("new series"));
  }

  @Test
  void theExampleIsSaidToBeInventedAndIsPlacedByOneClick() throws Exception {
    String form = page("");
    assertTrue(form.contains("An invented example, of no patient"), form);
    int at = form.indexOf("id=\"example\" href=\"") + "id=\"example\" href=\"".length();
    String address = form.substring(at, form.indexOf('"', at)).replace("&amp;", "&");
    String placed = page(address.substring(address.indexOf('?')));
    // 2 + 6 + 22 + 20 weeks are 50; unsupported begins after 30 of them, 30 * 7 / 30.44 months
    assertTrue(placed.contains("The course: 11.5 months (50 weeks) in all"), placed);
    assertTrue(placed.contains("6.9 months"), placed);
  }

  @Test
  void theMethodOfTheCaseStandsFirstThenTheOthersAndThatTheyAreNoComparison() throws Exception {
    String page = page("?method=induced-membrane" + UNION);
    int own = page.indexOf("new series of induced membrane");
    int other = page.indexOf("new series of bone transport");
    assertTrue(own > 0 && other > own, page);
    assertTrue(page.contains("not a comparison"));
    assertTrue(page.contains("regression to the mean"));
    assertTrue(page.contains("Why this is no comparison of methods"));
    // series i has 7 + 0.3 i months; among odd i, 7.3 and 7.9 lie below 8, of eight series
    assertTrue(page.contains("Series whose own average was earlier: 2 of 8."), page);
  }

  @Test
  void aTimeOnAClockThatNoSeriesHasIsNotComparedAndTheOtherClocksAreNamed() throws Exception {
    String page = page("?union=8&union-from=injury");
    assertTrue(page.contains("Not held against anything"), page);
    assertTrue(page.contains("16 from definitive operation"), page);
    assertFalse(page.contains("would be expected to report"));
  }

  @Test
  void aCourseOfPhasesHasItsTotalAndItsClocks() throws Exception {
    // 8 weeks are 56 days, 56/30.44 = 1.8 months; with 9.5 and 4 months 15.3, or 67 weeks
    String page =
        page(
            "?start=injury&phase-1=temporary-frame&duration-1=8&unit-1=weeks"
                + "&phase-2=in-frame&duration-2=9.5&phase-3=unsupported&duration-3=4");
    assertTrue(page.contains("The course: 15.3 months (67 weeks) in all"), page);
    assertTrue(page.contains("definitive operation: 1.8 months into the course"), page);
    assertTrue(page.contains("After 9.5 months"), page);
  }

  @Test
  void whatIsWrongInACaseIsToldInWordsAllAtOnce() throws Exception {
    HttpResponse<String> answer =
        running.get("/case?union=8&full=x&phase-1=in-frame&length=70&cost=5");
    assertEquals(422, answer.statusCode());
    assertTrue(answer.body().contains("choose what it is counted from"), answer.body());
    assertTrue(answer.body().contains("needs both its kind and how long"), answer.body());
    assertTrue(answer.body().contains("at most 45"), answer.body());
    assertTrue(answer.body().contains("three letters"), answer.body());
    assertEquals(422, running.get("/case?union=1e9&union-from=injury").statusCode());
    assertEquals(
        422, running.get("/case?start=frame-on&phase-1=temporary-frame&duration-1=2").statusCode());
  }

  @Test
  void thePlanOnThePageGivesTheShareWhenSentToTheApi() throws Exception {
    String page = page("?method=bone-transport" + UNION);
    Matcher plan = Pattern.compile("<pre tabindex=\"0\">(.*?)</pre>", Pattern.DOTALL).matcher(page);
    assertTrue(plan.find(), page);
    String json = plan.group(1).replace("&#34;", "\"").replace("&quot;", "\"");
    JsonNode result =
        JsonMapper.builder()
            .build()
            .readTree(
                running
                    .send(
                        running
                            .request("/api/v1/syntheses")
                            .header("Content-Type", "application/json")
                            .POST(BodyPublishers.ofString(json)))
                    .body());
    JsonNode place = result.at("/subgroups/0/places/0");
    assertEquals(8, place.path("value").asDouble(), result::toString);
    double below = place.path("newStudiesBelow").asDouble();
    assertTrue(below > 0 && below < 1, result::toString);
  }

  @Test
  void theFigureComesAsDrawingPictureAndTable() throws Exception {
    String query = "?method=bone-transport" + UNION + "&phase-1=in-frame&duration-1=9";
    String svg = running.get("/api/v1/case.svg" + query).body();
    assertTrue(svg.contains("Months from: definitive operation"), svg);
    assertTrue(svg.contains("Months from: frame put on"), svg);
    String csv = running.get("/api/v1/case.csv" + query).body();
    assertTrue(csv.contains("pooled,definitive operation,union,bone-transport"), csv);
    assertTrue(csv.contains("phase,frame put on,in the frame,,0.0,9.0"), csv);
    assertEquals(200, running.get("/api/v1/case.png" + query).statusCode());
    assertEquals(422, running.get("/api/v1/case.svg").statusCode());
  }
}
