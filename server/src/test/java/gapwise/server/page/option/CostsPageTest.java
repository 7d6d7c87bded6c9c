package gapwise.server.page.option;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.decision.cost.Entry;
import gapwise.server.testing.PageStates;
import gapwise.server.testing.SharedServer;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A table reckoned in costs, over the demonstration base; prices are invented, in the letters that
 * ISO 4217 keeps for tests.
 */
class CostsPageTest {
  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static final String TABLE =
      "?method=bone-transport&method=induced-membrane&from=5&to=7&aspect=union&aspect=infection"
          + "&aspect=later-amputation&aspect=unplanned-operation&aspect=full-weight";
  private static final String ASKED = TABLE + "&asked=yes" + PageStates.PRICES;
  private static final String UTILITIES =
      "&utility-in-treatment=0.5&utility-infected=0.4&utility-healed=0.85"
          + "&utility-not-healed=0.55&utility-amputated=0.65";

  private static String page(String query) throws Exception {
    HttpResponse<String> answer = running.get("/compare/cost" + query);
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body().replace('\u00a0', ' ');
  }

  @Test
  void nothingIsReckonedUntilItIsAskedForAndNoPriceIsBuiltIn() throws Exception {
    String page = page(TABLE);
    assertFalse(page.contains("Nothing can be reckoned yet"), page);
    for (Entry entry : Entry.values()) {
      String field = page.substring(page.indexOf("id=\"" + entry.code() + "\""));
      String tag = field.substring(0, field.indexOf('>'));
      assertTrue(tag.contains("value=\"\"") && !tag.contains("placeholder"), tag);
    }
  }

  @Test
  void everyMissingEntryIsNamedByItsName() throws Exception {
    String page = page(TABLE + "&asked=yes&currency=XTS");
    for (Entry entry : Entry.values()) {
      assertTrue(page.contains("missing: " + entry.label()), entry.label());
    }
    assertTrue(page.contains("missing: the year of all prices"), page);
    assertTrue(page.contains("missing: the most money for one more year"), page);
    assertTrue(page.contains("missing: the cost of the planned operations"), page);
    HttpResponse<String> api = running.get("/api/v1/cost-plane.svg" + TABLE);
    assertEquals(422, api.statusCode());
    assertTrue(api.body().contains("missing-entry"), api.body());
  }

  @Test
  void costsStandWithTheirTermsTheirPartsTheirFiguresAndTheirCautions() throws Exception {
    String page = page(ASKED + "&whole=yes");
    assertTrue(page.contains("Horizon 20 years; costs discounted by 3 % a year, effects by 3 %"));
    assertTrue(page.contains("XTS of 2024"), page);
    assertTrue(page.contains("All prices were entered by the reader, none is built in"), page);
    assertTrue(page.contains("years healed say nothing of it"), page);
    assertTrue(page.contains("Only costs are compared"), page);
    assertTrue(page.contains("Worth of knowing everything"), page);
    assertTrue(page.contains("/api/v1/cost-plane.svg?"), page);
    assertTrue(page.contains("/api/v1/cost-acceptability.svg?"), page);
  }

  @Test
  void withUtilitiesAnAmputationStandsOnThePlaneAndWithoutItDoesNot() throws Exception {
    String plain = running.get("/api/v1/cost-plane.csv" + ASKED).body();
    assertTrue(plain.contains("Induced membrane"), plain);
    assertFalse(plain.contains("Primary amputation"), plain);
    String weighed = running.get("/api/v1/cost-plane.csv" + ASKED + UTILITIES).body();
    assertTrue(weighed.contains("Primary amputation"), weighed);
    String curve = running.get("/api/v1/cost-acceptability.csv" + ASKED + UTILITIES).body();
    assertTrue(curve.contains("Primary amputation"), curve);
  }

  @Test
  void stagesAreThoseThatMostGroupsPlannedUntilSomebodyEntersOthers() throws Exception {
    String page = page(ASKED + "&whole=yes");
    assertTrue(
        page.matches("(?s).*Induced membrane 2 \\(as [0-9]+ of [0-9]+ groups? planned\\).*"), page);
    assertTrue(page.contains("id=\"stages-induced-membrane\""), page);
    String other = page(ASKED + "&whole=yes&stages-induced-membrane=3");
    assertTrue(other.contains("Induced membrane 3 (as entered)"), other);
    assertFalse(
        running
            .get("/api/v1/cost-plane.csv" + ASKED)
            .body()
            .equals(
                running
                    .get("/api/v1/cost-plane.csv" + ASKED + "&stages-induced-membrane=3")
                    .body()));
  }

  @ParameterizedTest
  @CsvSource({
    "price-year=24, not-a-year",
    "horizon-years=many, not-a-number",
    "horizon-years=200, entry-out-of-range",
    "discount-costs=3, entry-out-of-range",
    "sd-infection=-5, entry-out-of-range",
    "utility-healed=0.8, missing-entry",
    "worth-up-to=0, entry-out-of-range",
    "against=none-such, unknown-code",
    "against=allograft, method-left-out",
    "stages-induced-membrane=9, entry-out-of-range",
    "stages-induced-membrane=two, not-a-whole-number",
    "currency=a-very-long-currency, too-long"
  })
  void whatCannotBeReckonedIsNamedOnThePageAndByTheApi(String wrong, String code) throws Exception {
    String name = wrong.substring(0, wrong.indexOf('='));
    String query = ASKED.replaceAll("&" + name + "=[^&]*", "") + "&" + wrong;
    String page = page(query + "&whole=yes");
    assertTrue(page.contains("Nothing can be reckoned yet"), page);
    HttpResponse<String> api = running.get("/api/v1/cost-acceptability.svg" + query);
    assertEquals(422, api.statusCode(), api.body());
    assertTrue(api.body().contains("\"" + code + "\""), api.body());
  }

  @Test
  void aTableWithoutAnOutcomeThatACourseNeedsIsRefused() throws Exception {
    String page = page(ASKED.replace("&aspect=infection", "") + "&whole=yes");
    assertTrue(page.contains("The table has no column \"Infection afterwards\""), page);
  }

  @Test
  void aSpreadWithoutItsAmountIsNamed() throws Exception {
    String page = page(TABLE + "&asked=yes&sd-infection=5");
    assertTrue(page.contains("a standard deviation stands without its amount"), page);
  }
}
