package gapwise.server.page.result;

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

class BySizePageTest {
  @RegisterExtension static final SharedServer running = SharedServer.withStudies();

  private static String page(String query) throws Exception {
    HttpResponse<String> answer = running.get("/by-size" + query);
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body();
  }

  @Test
  void theSlopeStandsFirstAndThenWhatItCannotSay() throws Exception {
    // Series i of the invented base has a mean length of 4 + 0.4 i cm and 7 + 0.3 i months: on the
    // log scale fitted to 16 such points, the ends lie 0.75 months a cm apart by arithmetic.
    String page = page("?outcome=time-to-union");
    int slope = page.indexOf("rises by about 0.7 months for each further cm.");
    int slopeRounded = page.indexOf("rises by about 0.8 months for each further cm.");
    int caution = page.indexOf("not through patients");
    assertTrue(Math.max(slope, slopeRounded) > 0, page);
    assertTrue(Math.max(slope, slopeRounded) < caution);
  }

  @Test
  void severalMethodsOnOneLineAreSaidToBeMixedAndNoComparison() throws Exception {
    String both = page("?outcome=union");
    assertTrue(both.contains("One line runs through all methods shown."));
    assertTrue(both.contains("not a comparison"));
    assertFalse(page("?outcome=union&method=bone-transport").contains("One line runs through"));
  }

  @Test
  void theCurveIsAChoiceInTheAddressAndTakesEightSeries() throws Exception {
    assertTrue(page("?outcome=union&shape=curve").contains("spline with 3 knots"));
    String few = page("?outcome=union&shape=curve&year-from=2018");
    assertTrue(few.contains("A straight line is drawn in place of a curve"), few);
    String fewer = page("?outcome=union&year-from=2021");
    assertTrue(fewer.contains("No line is drawn"), fewer);
  }

  @Test
  void theFigureMarksWhereTheLineLeavesTheData() throws Exception {
    String svg = running.get("/api/v1/by-size.svg?outcome=union").body();
    assertTrue(svg.contains(">beyond the data<"), svg);
    assertEquals(16, svg.split("data-part=\"series\"", -1).length - 1);
  }

  @Test
  void theTableOfTheFigureHoldsTheLengthsWithinEachSeries() throws Exception {
    String csv = running.get("/api/v1/by-size.csv?outcome=union").body();
    // series 0: mean 4 cm, from 2 to 7, 11 of 12 united
    assertTrue(csv.contains(",bone-transport,4.0,2.0,7.0,range,0.9166666666666"), csv);
    assertTrue(csv.contains("\r\ncurve,"), csv);
  }

  @Test
  void theBandsAreThoseOfTheAddress() throws Exception {
    String usual = page("?outcome=union");
    assertTrue(usual.contains("under 2") && usual.contains("8 to under 12"));
    String own = page("?outcome=union&cuts=5,7.5");
    assertTrue(own.contains("under 5") && own.contains("5 to under 7.5"), own);
    assertTrue(own.contains("7.5 and more"));
  }

  @Test
  void cutsThatDoNotRiseAndUnknownShapesAreRefusedInWords() throws Exception {
    HttpResponse<String> cuts = running.get("/by-size?outcome=union&cuts=6,4");
    assertEquals(422, cuts.statusCode());
    assertTrue(cuts.body().contains("rising lengths in cm"), cuts.body());
    assertEquals(422, running.get("/by-size?outcome=union&shape=bend").statusCode());
  }

  @Test
  void thePlanOfferedGivesTheSameLineWhenSentToTheApi() throws Exception {
    JsonMapper json = JsonMapper.builder().build();
    String plan = running.get("/api/v1/by-size-plan.json?outcome=union").body();
    String result = running.get("/api/v1/by-size-result.json?outcome=union").body();
    JsonNode again =
        json.readTree(
            running
                .send(
                    running
                        .request("/api/v1/syntheses")
                        .header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofString(plan)))
                .body());
    JsonNode coefficients = json.readTree(result).at("/regression/coefficients");
    assertEquals(2, coefficients.size());
    assertEquals(coefficients, again.at("/regression/coefficients"));
  }

  @Test
  void thePageIsLinkedFromTheNavigationAndFromThePooledPage() throws Exception {
    String pooled = running.get("/pooled?outcome=union&method=bone-transport").body();
    assertTrue(running.get("/pooled").body().contains("href=\"/by-size\""));
    assertTrue(pooled.contains("href=\"/by-size?outcome=union&amp;method=bone-transport\""));
  }
}
