package gapwise.server.page.claim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.server.testing.SharedServer;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Claims on the demonstration base, which is invented. */
class ClaimPageTest {
  private static final String DIRECT =
      "?a=bone-transport&says=more&outcome=primary-union&b=induced-membrane";

  private static final String NONE =
      "?a=autograft&says=more&outcome=primary-union&b=printed-scaffold";

  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static String page(String query) throws Exception {
    HttpResponse<String> answer = running.get("/claim" + query);
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body();
  }

  @Test
  void theSentenceStandsFirstThenTheFigureTheFactsTheAnalysesAndTheReasons() throws Exception {
    String page = page(DIRECT);
    List<Integer> order =
        List.of(
            page.indexOf("What may be said today"),
            page.indexOf("The studies that hold both methods"),
            page.indexOf("What lowers certainty"),
            page.indexOf("Under every defensible analysis"),
            page.indexOf("<h3>Direct comparisons</h3>"),
            page.indexOf("<h3>Indirect comparison</h3>"),
            page.indexOf("<h2>Each method by itself</h2>"),
            page.indexOf("Why this is no comparison of methods"),
            page.indexOf("What study would settle it"));
    assertTrue(order.get(0) > 0);
    assertEquals(order.stream().sorted().toList(), order);
    assertTrue(page.contains("2 studies with 71 patients or limbs have compared"), page);
    assertTrue(page.contains("can neither be made nor denied"));
    assertTrue(page.contains("no grade"));
    assertTrue(page.contains("common practice, no source"));
  }

  /** Studies 54 (20 of 22, 19 of 20) and 55 (12 of 14, 10 of 15) of the demonstration base. */
  @Test
  void theFigureTellsCountsDirectionLengthsAndThatAllIsInvented() throws Exception {
    String csv = running.get("/api/v1/claim-figure.csv" + DIRECT).body();
    List<String> series = csv.lines().filter(line -> line.startsWith("series,")).toList();
    assertEquals(2, series.size(), csv);
    assertTrue(series.get(0).contains("20 of 22 against 19 of 20"), csv);
    assertTrue(series.get(1).contains("12 of 14 against 10 of 15"), csv);
    assertTrue(series.get(1).contains("missing bone 6.5 cm against 6.7 cm"), csv);
    String drawing = running.get("/api/v1/claim-figure.svg" + DIRECT + "&for=a4").body();
    assertTrue(drawing.contains("Invented demonstration data"), drawing);
    assertTrue(drawing.contains("more often after bone transport"), drawing);
    assertEquals(422, running.get("/api/v1/claim-figure.png" + NONE).statusCode());
  }

  @Test
  void theManyAnalysesComeApartAndWithoutScriptInThePage() throws Exception {
    String page = page(DIRECT);
    assertTrue(page.contains("hx-get=\"/claim/ways?"), page);
    assertTrue(page.contains("ways=all#ways"));
    String apart = running.get("/claim/ways" + DIRECT).body();
    assertTrue(apart.contains("Undecided, of 100"), apart);
    assertFalse(apart.contains("<html"));
    String within = page(DIRECT + "&ways=all");
    assertTrue(within.contains("Undecided, of 100"));
    assertFalse(within.contains("hx-get=\"/claim/ways"));
  }

  @Test
  void everyPlanOnThePageIsTakenByTheApi() throws Exception {
    JsonMapper json = JsonMapper.builder().build();
    Matcher plans =
        Pattern.compile("<pre tabindex=\"0\">(.*?)</pre>", Pattern.DOTALL)
            .matcher(page(DIRECT + "&ways=all"));
    int found = 0;
    while (plans.find()) {
      String plan =
          plans.group(1).replace("&#34;", "\"").replace("&lt;", "<").replace("&amp;", "&");
      HttpResponse<String> answer =
          running.send(
              running
                  .request("/api/v1/syntheses")
                  .header("Content-Type", "application/json")
                  .POST(BodyPublishers.ofString(plan)));
      assertEquals(200, answer.statusCode(), plan + answer.body());
      JsonNode result = json.readTree(answer.body());
      assertTrue(result.has("plan"), answer.body());
      found++;
    }
    // direct, indirect, each by itself, set against each other, patients and series of the one
    // method
    // and of the other, many analyses, trial
    assertEquals(8, found);
  }

  @Test
  void withoutADirectComparisonThePageSaysSo() throws Exception {
    String page = page(NONE);
    assertTrue(page.contains("No study here has compared autograft with printed scaffold"), page);
    assertTrue(page.contains("No path"));
    assertTrue(page.contains("which are no comparison"));
  }

  @Test
  void differentClocksOutcomesAndTheSameMethodAreRefusedWithTheReason() throws Exception {
    String clocks = page("?a=bone-transport&says=less&outcome=time-to-union&b=induced-membrane");
    assertTrue(clocks.contains("Times on different clocks are not compared"), clocks);
    assertTrue(clocks.contains("outcome=time-to-union&amp;b=induced-membrane&amp;clock=injury"));
    String outcomes =
        page(
            "?a=bone-transport&outcome=external-fixation-time&b=induced-membrane"
                + "&outcome-b=time-to-full-weight-bearing");
    assertTrue(outcomes.contains("are not the same thing"), outcomes);
    String same = page("?a=autograft&outcome=union&b=autograft");
    assertTrue(same.contains("Both sides of the claim are autograft"), same);
    assertFalse(same.contains("talk-sentence"));
  }

  @Test
  void anEmptySideIsNamedAndLeadsToTheGaps() throws Exception {
    String page = page("?a=bone-transport&outcome=external-fixation-time&b=induced-membrane");
    assertTrue(page.contains("No series of induced membrane here can speak of"), page);
    assertTrue(page.contains("href=\"/map?outcome=external-fixation-time\""), page);
    assertEquals(
        404,
        running
            .get("/claim/ways?a=bone-transport&outcome=external-fixation-time&b=induced-membrane")
            .statusCode());
  }

  @Test
  void theDifferenceThatWouldMatterCanBeChangedAndZeroIsRefusedWithTheReason() throws Exception {
    assertTrue(page(DIRECT).contains("A randomised trial of two equal arms would need"));
    assertTrue(
        page(DIRECT + "&differ=0").contains("no number of patients finds a difference of 0"));
    assertTrue(page(DIRECT + "&differ=5").contains("As you set it."));
    assertEquals(422, running.get("/claim" + DIRECT + "&differ=many").statusCode());
  }

  @Test
  void wrongPartsOfAClaimAreAllToldAtOnce() throws Exception {
    HttpResponse<String> answer = running.get("/claim?a=nothing&b=neither&outcome=union&says=x");
    assertEquals(422, answer.statusCode());
    assertTrue(answer.body().contains("nothing") && answer.body().contains("neither"));
  }

  @Test
  void thePageIsInTheNavigationAndAsksForItsPartsFirst() throws Exception {
    String page = page("");
    assertTrue(page.contains("href=\"/claim\" aria-current=\"page\""), page);
    assertTrue(page.contains("id=\"claim-a\""));
    assertFalse(page.contains("What may be said today"));
  }

  /**
   * The counts are those of the one femoral series of each method in the demonstration workbook.
   */
  @Test
  void aBoneRestrictsBothSidesAndCanBeTakenOff() throws Exception {
    String claim = "?a=autograft&says=more&outcome=refracture&b=allograft";
    String all = page(claim).replace('\u00a0', ' ');
    assertTrue(all.contains("4 of 64 patients or limbs broken again, in 5 series"), all);
    assertTrue(all.contains("2 of 37 patients or limbs broken again, in 4 series"), all);
    assertTrue(all.contains("name=\"bone\" value=\"femur\">"), all);
    String femur = page(claim + "&bone=femur").replace('\u00a0', ' ');
    assertTrue(femur.contains("3 of 15 limbs broken again in the one series there is"), femur);
    assertTrue(femur.contains("1 of 11 limbs broken again in the one series there is"), femur);
    assertTrue(femur.contains("name=\"bone\" value=\"femur\" checked>"), femur);
    String form = femur.substring(femur.indexOf("id=\"claim-form\""));
    form = form.substring(0, form.indexOf("</form>"));
    assertFalse(form.contains("type=\"hidden\" name=\"bone\""), form);
    String without = claim.replace("&", "&amp;");
    assertTrue(femur.contains("<a href=\"/claim" + without + "\">femur"), femur);
  }
}
