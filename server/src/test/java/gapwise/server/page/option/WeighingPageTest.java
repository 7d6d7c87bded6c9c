package gapwise.server.page.option;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.decision.option.Aspect;
import gapwise.server.testing.SharedServer;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A table weighed on its page and as files, over the demonstration base, which is invented. */
class WeighingPageTest {
  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static final String TABLE =
      "?method=bone-transport&method=induced-membrane&from=5&to=7&aspect=union&aspect=infection";
  private static final String ASKED = TABLE + "&asked=yes&weigh=union&weigh=infection";

  private static String page(String query) throws Exception {
    HttpResponse<String> answer = running.get("/compare/weighing" + query);
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body();
  }

  @Test
  void nothingIsWeighedUntilItIsAskedFor() throws Exception {
    String page = page(TABLE);
    assertFalse(page.contains("Comes first"), page);
    assertFalse(page.contains("hx-get=\"/compare/weighing/result"), page);
    assertTrue(page.contains("name=\"weigh\" value=\"union\" checked"), page);
  }

  @Test
  void wishesOfTheSituationAreTakenOverInTheirOrder() throws Exception {
    String page = page("?wish=least-infection&wish=walking-soon");
    String infection = page.substring(page.indexOf("name=\"place-infection\""));
    assertTrue(infection.indexOf("value=\"1\" selected") < infection.indexOf("</select>"), page);
    assertTrue(infection.contains("value=\"1\" selected"), page);
    String weight = page.substring(page.indexOf("name=\"place-full-weight\""));
    assertTrue(weight.contains("value=\"2\" selected"), page);
  }

  @Test
  void sharesStandWithTheirWishesTheirErrorTheirFilesAndTheirCautions() throws Exception {
    String page = page(ASKED + "&least-union=20&whole=yes");
    assertTrue(page.contains("Bone joined at least a fifth of the decision"), page);
    assertTrue(page.contains("of 100 draws (to within "), page);
    assertTrue(page.contains("Separate groups of patients, no comparison"), page);
    assertTrue(page.contains("None of them is recommended"), page);
    assertTrue(page.contains("/api/v1/weighing.svg?"), page);
    assertTrue(
        page.contains("<b>Primary amputation</b>: Bone joined: means nothing after it"), page);
  }

  @Test
  void theFileHoldsSharesThatAddUpAndTheSameForTheSameSeed() throws Exception {
    String csv = running.get("/api/v1/weighing.csv" + ASKED).body();
    double sum =
        csv.lines()
            .filter(line -> line.startsWith("Bone transport,"))
            .mapToDouble(line -> Double.parseDouble(line.split(",")[2]))
            .sum();
    assertEquals(1, sum, 1e-9, csv);
    assertEquals(csv, running.get("/api/v1/weighing.csv" + ASKED + "&seed=1").body());
    assertFalse(csv.equals(running.get("/api/v1/weighing.csv" + ASKED + "&seed=2").body()));
  }

  @ParameterizedTest
  @CsvSource({
    "least-union=70&least-infection=50, least-weights-over-1, Bone joined 0.7",
    "least-union=50&most-union=20, limits-cross, change one of the two",
    "place-union=1&place-infection=1, same-place-twice, give each its own",
    "place-union=1, one-place-alone, an order takes two",
    "worst-union=50, half-a-range, enter its worst and its best",
    "worst-union=50&best-union=50, no-range, the same worst and best",
    "least-union=much, not-a-number, parts of 100 of the decision",
    "least-union=120, weight-outside-0-to-1, a weight lies from 0 to 1",
    "seed=x, not-a-whole-number, a number of up to 9 digits",
    "unknown=guess, unknown-code, leave-out",
    "weigh=happiness, unknown-code, happiness",
    "weigh=cost, not-in-the-table, no column"
  })
  void whatCannotBeWeighedIsNamedOnThePageAndByTheApi(String wrong, String code, String words)
      throws Exception {
    String page = page(ASKED + "&whole=yes&" + wrong);
    assertTrue(page.contains("These wishes cannot be weighed"), page);
    assertTrue(page.contains(words), page);
    HttpResponse<String> api = running.get("/api/v1/weighing.svg" + ASKED + "&" + wrong);
    assertEquals(422, api.statusCode(), api.body());
    assertTrue(api.body().contains("\"" + code + "\""), api.body());
  }

  @Test
  void nothingTickedIsNamed() throws Exception {
    assertTrue(page(TABLE + "&asked=yes").contains("no outcome is weighed"));
  }

  /** What no other test asks, so that nothing of it is remembered. */
  @Test
  void whatTakesLongIsFetchedPartByPart() throws Exception {
    String query = ASKED.replace("from=5", "from=4");
    String page = page(query);
    assertTrue(page.contains("hx-get=\"/compare/weighing/result?"), page);
    int parts = 0;
    String part = running.get("/compare/weighing/result" + query).body();
    while (part.contains("hx-get=\"/compare/weighing/result?")) {
      parts++;
      part = running.get("/compare/weighing/result" + query).body();
    }
    // Its outcomes, the table, and the averages of two of them; those that begin within a second
    // come together, and the last is shown at once.
    assertTrue(parts < Aspect.values().length + 3, "fetched " + parts);
    assertTrue(part.contains("of 100 draws (to within "), part);
    assertFalse(part.contains("<html"), part);
    assertTrue(page(query).contains("of 100 draws (to within "));
  }

  @Test
  void theTableLeadsHere() throws Exception {
    String table = running.get("/compare" + TABLE + "&whole=yes").body();
    assertTrue(table.contains("href=\"/compare/weighing?"), table);
    assertTrue(table.contains("href=\"/compare/cost?"), table);
  }
}
