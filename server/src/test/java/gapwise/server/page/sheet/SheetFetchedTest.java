package gapwise.server.page.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.PageStates;
import gapwise.server.testing.SharedServer;
import java.net.http.HttpResponse;
import java.time.LocalDate;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A sheet fetched piece by piece, and what an address puts onto its page for the team. */
class SheetFetchedTest {
  @RegisterExtension private static final SharedServer SERVER = SharedServer.withDemonstration();

  private static final String TWO = "method=bone-transport&method=induced-membrane";
  private static final String WEIGHING = "&with=weighing&weigh=union&weigh=infection";
  private static final String COSTS = "&with=cost" + PageStates.PRICES;

  private static String body(String path) throws Exception {
    HttpResponse<String> answer = SERVER.get(path);
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body().replace('\u00a0', ' ');
  }

  /** How many requests of one piece it takes until the sheet is there. */
  private static int pieces(String query) throws Exception {
    int pieces = 0;
    while (pieces < 100
        && !body("/sheet/shown?" + query).contains("<section class=\"sheet patient")) {
      pieces++;
    }
    return pieces;
  }

  /** What no other test asks, so that nothing of it is remembered. */
  @Test
  void thePageComesBeforeAnythingIsWorkedOutAndFetchesItPieceByPiece() throws Exception {
    String asked = TWO + "&from=3.7&to=6.1" + WEIGHING;
    String page = body("/sheet?" + asked);
    assertTrue(page.contains("hx-get=\"/sheet/shown?"), page);
    assertTrue(page.contains("&amp;whole=yes\">Show the result</a></p></noscript>"), page);
    assertFalse(page.contains("<section class=\"sheet"), page);
    // Two outcomes, their table, their options against each other, and their averages; those that
    // begin within a second come together, and the last is shown at once.
    int fetched = pieces(asked);
    assertTrue(fetched < 7, "fetched " + fetched);
    assertTrue(body("/sheet?" + asked).contains("<section class=\"sheet team"));
    assertFalse(body("/sheet/shown?" + asked).contains("<html"));
  }

  @Test
  void weighingAndCostsAreOffUntilTheAddressAsksForThem() throws Exception {
    String asked = "/sheet?whole=yes&from=5&to=7&" + TWO;
    String plain = body(asked);
    assertTrue(plain.contains("<b>Weighed by wishes:</b> Not asked for."), plain);
    assertTrue(plain.contains("<b>Costs:</b> Not asked for."), plain);
    String weighed = body(asked + WEIGHING);
    assertTrue(weighed.contains("of 100 ways of weighing drawn from those that fit"), weighed);
    assertTrue(weighed.contains("<b>Costs:</b> Not asked for."), weighed);
    String costed = body(asked + COSTS);
    assertTrue(costed.contains("In XTS of 2024 for one patient"), costed);
    assertTrue(costed.contains("Horizon 20 years"), costed);
  }

  @Test
  void whatIsOnTheSheetIsWhatItsOwnPageShows() throws Exception {
    String asked = "whole=yes&from=5&to=7&" + TWO + COSTS;
    String page = body("/compare/cost?" + asked + "&asked=yes");
    String cell = page.substring(page.indexOf("data-head=\"Cost\">"));
    String cost = cell.substring(cell.indexOf('>') + 1, cell.indexOf("</td>"));
    assertTrue(cost.matches("[0-9,]+ \\([0-9,]+ to [0-9,]+\\)"), cost);
    assertTrue(body("/sheet?" + asked).contains("Bone transport " + cost), cost);
    assertTrue(page.contains("with=cost") && page.contains(">Put these costs on the sheet</a>"));
  }

  @Test
  void pricesThatAreMissingAreNamedOnTheSheet() throws Exception {
    String sheet = body("/sheet?whole=yes&from=5&to=7&" + TWO + "&with=cost&currency=XTS");
    assertTrue(sheet.contains("<b>Costs:</b> Asked for, and not done: missing"), sheet);
  }

  @Test
  void comparisonsAndADifferenceThatMattersStandWithTheirCertainty() throws Exception {
    String asked = "whole=yes&from=5&to=7&" + TWO;
    String plain = body("/sheet?" + asked);
    assertTrue(plain.contains("Bone transport less Induced membrane: "), plain);
    assertTrue(plain.contains("None was named."), plain);
    String named = body("/sheet?" + asked + "&matters-union=10");
    assertTrue(named.contains("Named before the sheet was made: Bone joined 10 of 100."), named);
    assertTrue(named.contains("separate groups and no comparison: By more than 10 of 100"), named);
    String compared = body("/compare?" + asked + "&matters-union=10");
    String chances =
        named.substring(named.indexOf("By more than 10 of 100: Bone transport higher"));
    chances = chances.substring(0, chances.indexOf(" of 100.") + 8);
    assertTrue(compared.contains(chances), chances);
  }

  @Test
  void theDayOfTheLastSearchIsPrintedFromTheAddressAndOtherwiseLeftToWriteIn() throws Exception {
    String asked = "/sheet?whole=yes&from=5&to=7&" + TWO;
    assertTrue(body(asked).contains("aria-label=\"Day of the last search"));
    String dated = body(asked + "&searched=2025-11-03");
    assertTrue(dated.contains("<b>Last search of the literature:</b> 2025-11-03."), dated);
    assertTrue(
        dated.matches(
            "(?s).*evidence base last changed on \\d{4}-\\d\\d-\\d\\d, at change \\d+\\. .*"),
        dated);
  }

  @ParameterizedTest
  @CsvSource({
    "searched=yesterday, is not a date",
    "searched=2025-02-30, is not a date",
    "searched=TOMORROW, is still to come",
    "with=everything, everything",
    "with=weighing&weigh=happiness, happiness",
    "made=x, is no number of a change"
  })
  void whatCannotBeReadIsNamedBeforeAnythingIsWorkedOut(String wrong, String named)
      throws Exception {
    String tomorrow = LocalDate.now(ZoneOffset.UTC).plusDays(2).toString();
    String query = TWO + "&" + wrong.replace("TOMORROW", tomorrow);
    for (String path : new String[] {"/sheet?", "/sheet/shown?", "/sheet.pdf?", "/sheet.docx?"}) {
      HttpResponse<String> answer = SERVER.get(path + query);
      assertEquals(422, answer.statusCode(), path + query);
      assertTrue(answer.body().contains(named), answer.body());
    }
  }
}
