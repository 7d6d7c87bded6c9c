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
  void theFormAsksFourThingsFirstAndThenWhatIsUsualOfTheMethod() throws Exception {
    String first = form(page(""));
    assertEquals(4, controls(first), first);
    assertFalse(first.contains("id=\"union\""), first);
    String then = page("?step=course&method=bone-transport");
    assertTrue(then.contains("id=\"union\""), then);
    assertTrue(then.contains("of the averages of 8 series"), then);
    // series i has 7 + 0.3 i months; the quartiles of all sixteen are 8.125 and 10.375 by
    // numpy.quantile
    String any = page("?step=course");
    assertTrue(any.contains("usually 8.1 to 10.4 months"), any);
    assertTrue(then.contains("id=\"union\" name=\"union\" type=\"text\" inputmode=\"decimal\""));
    assertEquals(0, count(form(then), "<input id=\"[^>]*value=\"[0-9]"), then);
    // No group here says anything of phases: those common with a frame are offered, without hints.
    assertTrue(then.contains("1. in the frame") && !then.contains("hint-duration"), then);
  }

  @Test
  void nothingThatIdentifiesAPersonIsAskedFor() throws Exception {
    Matcher label =
        Pattern.compile("<label[^>]*>(.*?)</label>", Pattern.DOTALL)
            .matcher(form(page("?step=course&with=cost")));
    int labels = 0;
    for (; label.find(); labels++) {
      assertFalse(
          label.group(1).matches("(?is).*\\b(name|date|birth|age|hospital|number)\\b.*"),
          label.group());
    }
    assertTrue(labels > 10, "labels: " + labels);
  }

  @Test
  void aRowChosenIsAddedAndARowTakenOffIsGoneWithItsValuesEachByAnAddress() throws Exception {
    String added = moved("?method=bone-transport&step=course&milestone=end&union=8");
    assertTrue(added.endsWith("#end"), added);
    assertTrue(page(query(added) + "&union-from=injury").contains("name=\"end\""), added);
    String gone =
        moved("?method=bone-transport&union=8&union-from=injury&union-unit=weeks&drop=union");
    assertFalse(gone.contains("union=8") || gone.contains("union-from"), gone);
    assertFalse(page(query(gone)).contains("name=\"union\""), gone);
    String back = moved(query(gone) + "&milestone=union");
    assertTrue(page(query(back)).contains("name=\"union\""), back);
  }

  @Test
  void aPhaseIsPutWhereItBelongsAndThoseAfterItMoveAlong() throws Exception {
    String course = "?usual=any&offered-1=in-frame&duration-1=9&offered-2=unsupported&duration-2=4";
    String put = moved(course + "&unit-2=weeks&phase=latency&after=0");
    assertEquals(
        "?usual=any&offered-1=latency&offered-2=in-frame&duration-2=9&offered-3=unsupported"
            + "&duration-3=4&unit-3=weeks",
        query(put));
    // One without a length is no part of the course: 9 months and 4 weeks of 7/30.44 months
    String placed = page(query(put));
    assertTrue(placed.contains("The course: 9.9 months"), put);
    assertTrue(placed.contains("no length is entered: latency before distraction."), placed);
    assertFalse(page("?phase-1=in-frame&duration-1=9").contains("no length is entered"));
    String without = moved(query(put) + "&drop=phase-2");
    assertEquals(
        "?usual=any&offered-1=latency&offered-2=unsupported&duration-2=4&unit-2=weeks",
        query(without));
    String none = moved("?usual=any&offered-1=latency&drop=phase-1");
    assertFalse(page(query(none)).contains("name=\"offered-1\""), none);
    assertTrue(page(query(none) + "&method=autograft").contains("name=\"offered-1\""), none);
  }

  @Test
  void anOldAddressOpensTheSameCaseAndItsFilesKeepTheOldNames() throws Exception {
    String old = page("?start=injury&phase-1=temporary-frame&duration-1=8&unit-1=weeks");
    String offered = page("?start=injury&offered-1=temporary-frame&duration-1=8&unit-1=weeks");
    String heading = "The course: 1.8 months (8 weeks) in all";
    assertTrue(old.contains(heading) && offered.contains(heading), offered);
    assertTrue(
        offered.contains(
            "/api/v1/case.csv?start=injury&amp;duration-1=8&amp;unit-1=weeks&amp;phase-1=temporary-frame"),
        offered);
  }

  @Test
  void whatIsWrongStandsAtItsFieldAndNothingEnteredIsLost() throws Exception {
    HttpResponse<String> answer = running.get("/case?union=8&length=70&method=bone-transport");
    assertEquals(422, answer.statusCode());
    String body = answer.body();
    assertTrue(body.contains("id=\"wrong-union-from\""), body);
    assertTrue(body.contains("aria-describedby=\"wrong-union-from\""), body);
    assertTrue(body.contains("value=\"70\" aria-invalid=\"true\""), body);
    assertTrue(body.contains("value=\"8\""), body);
  }

  @Test
  void theCourseSoFarIsDrawnAloneOrSaysWhyItIsNot() throws Exception {
    String drawn = running.get("/case/course?offered-1=in-frame&duration-1=9").body();
    assertTrue(drawn.contains("<svg") && drawn.contains("9.0 months (39 weeks) in all"), drawn);
    assertFalse(drawn.contains("<html") || drawn.contains("union"), drawn);
    HttpResponse<String> wrong = running.get("/case/course?union=8");
    assertEquals(200, wrong.statusCode());
    assertTrue(wrong.body().contains("choose what it is counted from"), wrong.body());
    assertTrue(running.get("/case/course").body().contains("Nothing to draw yet"));
  }

  private static String moved(String query) throws Exception {
    HttpResponse<String> answer = running.get("/case" + query);
    assertEquals(303, answer.statusCode(), answer.body());
    return answer.headers().firstValue("Location").orElseThrow();
  }

  private static String query(String address) {
    return address.substring(address.indexOf('?')).replaceAll("#.*", "");
  }

  private static String form(String page) {
    return page.substring(page.indexOf("<form action=\"/case\""), page.indexOf("</main>"));
  }

  private static int controls(String form) {
    return count(form, "<(select|input|textarea)\\b(?![^>]*type=\"hidden\")");
  }

  private static int count(String text, String pattern) {
    return (int) Pattern.compile(pattern).matcher(text).results().count();
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
