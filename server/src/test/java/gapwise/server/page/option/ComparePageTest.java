package gapwise.server.page.option;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.evidence.vocabulary.Method;
import gapwise.server.testing.SharedServer;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Methods side by side, on the demonstration base, which is invented. */
class ComparePageTest {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();
  private static final String SITUATION =
      "?from=6&to=6&infected=yes&segment=43&method=bone-transport&method=induced-membrane"
          + "&method=printed-scaffold&age=45&smoker=yes";
  private static final Pattern VALUE =
      Pattern.compile(
          "<a class=\"value\" href=\"([^\"]*)\">([^<]*)</a>\\s*<span class=\"limits\">([^<]*)<");

  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static String page(String path) throws Exception {
    return running.get(path).body().replace('\u00a0', ' ').replaceAll("\\s+", " ");
  }

  private static JsonNode options(String query) throws Exception {
    return MAPPER.readTree(running.get("/api/v1/options" + query).body());
  }

  @Test
  void everyNumberIsThatOfItsOwnPooledPage() throws Exception {
    String table = page("/compare/table" + SITUATION);
    List<MatchResult> values = VALUE.matcher(table).results().toList();
    assertTrue(values.size() >= 12, values.size() + " numbers");
    List<String> differ = new ArrayList<>();
    for (MatchResult one : values) {
      String pooled = page(one.group(1).replace("&amp;", "&"));
      String answer = pooled.substring(pooled.indexOf("<div class=\"answer\">"));
      if (!answer.contains("<strong>" + one.group(2))
          || !answer.contains("(95 % interval " + one.group(3))) {
        differ.add(one.group(1) + ": " + one.group(2) + " (" + one.group(3) + ")");
      }
    }
    assertEquals(List.of(), differ);
  }

  @Test
  void amputationIsAlwaysThereAndMethodsStandInTheOrderOfTheVocabulary() throws Exception {
    List<String> codes = new ArrayList<>();
    options(SITUATION).path("methods").forEach(one -> codes.add(one.at("/method/code").asText()));
    assertTrue(codes.contains("primary-amputation"), codes.toString());
    List<String> order = Method.vocabulary().codes();
    assertEquals(
        codes.stream().sorted((a, b) -> order.indexOf(a) - order.indexOf(b)).toList(), codes);
  }

  @Test
  void whatIsNotKnownSaysInWhichWay() throws Exception {
    JsonNode methods = options("?from=6&to=6").path("methods");
    List<String> ways = new ArrayList<>();
    for (JsonNode method : methods) {
      for (JsonNode cell : method.path("outcomes")) {
        ways.add(cell.path("known").asText());
      }
      if (method.at("/method/code").asText().equals("primary-amputation")) {
        assertEquals("does-not-apply", method.at("/outcomes/0/known").asText());
      }
    }
    for (String way : List.of("average", "one-series", "not-counted", "does-not-apply")) {
      assertTrue(ways.contains(way), way);
    }
    String table = page("/compare/table?from=6&to=6");
    assertTrue(table.contains("none counted this"), table);
    assertTrue(table.contains("does not apply"), table);
    assertFalse(table.contains("NaN"), table);
  }

  @Test
  void aLengthThatNobodyReportedHasNoStudyButAmputation() throws Exception {
    for (JsonNode method : options("?from=40&to=40").path("methods")) {
      boolean amputation = method.at("/method/code").asText().endsWith("amputation");
      assertEquals(
          amputation, method.path("studies").asInt() > 0, method.path("method").toString());
    }
  }

  @Test
  void fitAlwaysHasFourPartsOfOneWhole() throws Exception {
    for (JsonNode method : options(SITUATION).path("methods")) {
      for (JsonNode cell : method.path("outcomes")) {
        JsonNode fit = cell.path("fit");
        if (!fit.isMissingNode()) {
          double sum =
              fit.path("inside").asDouble()
                  + fit.path("edge").asDouble()
                  + fit.path("outside").asDouble()
                  + fit.path("unknown").asDouble();
          assertEquals(1, sum, 1e-9, method.toString());
        }
      }
    }
  }

  @Test
  void comparisonsWithinStudiesStandApartWithTheirPlan() throws Exception {
    JsonNode within = options(SITUATION).path("comparedWithinStudies");
    assertFalse(within.isEmpty());
    JsonNode first = within.get(0);
    assertEquals("bone-transport", first.at("/first/code").asText());
    assertEquals("induced-membrane", first.at("/second/code").asText());
    assertTrue(first.has("plan"));
    JsonNode claim =
        MAPPER.readTree(
            running
                .get(
                    "/api/v1/claim?a=bone-transport&b=induced-membrane&outcome=primary-union"
                        + "&from=6&to=6")
                .body());
    assertEquals(claim.at("/direct/numbers/studies").asInt(), first.path("studies").asInt());
    assertEquals(claim.at("/direct/sentences"), first.path("sentences"));
  }

  @Test
  void aDifferenceThatMattersHasThreeProbabilitiesOfOneWhole() throws Exception {
    JsonNode apart = options(SITUATION + "&matters-union=10").path("separateGroups");
    assertEquals(3, apart.size());
    for (JsonNode pair : apart) {
      JsonNode chances = pair.path("chances");
      assertEquals(0.1, chances.path("matters").asDouble(), 1e-12);
      assertEquals(
          1,
          chances.path("firstHigher").asDouble()
              + chances.path("secondHigher").asDouble()
              + chances.path("neither").asDouble(),
          1e-9);
    }
    assertTrue(options(SITUATION).path("separateGroups").isEmpty());
  }

  @Test
  void wordsWithoutAnOutcomeLeadHereAndSayWhatTheyTookOfThePatient() throws Exception {
    HttpResponse<String> asked =
        running.get(
            "/ask?q=6+cm+infected+distal+tibial+gap,+45,+smoker:+transport,+induced+membrane,+flap,"
                + "+scaffold+or+amputation%3F");
    assertEquals(303, asked.statusCode());
    String address = asked.headers().firstValue("Location").orElseThrow();
    assertTrue(address.contains("method=primary-amputation"), address);
    assertFalse(address.contains("method=amputation"), "one amputation among the ways: " + address);
    String page = running.get(address).body();
    assertTrue(page.contains("6 cm of bone missing"), page);
    assertTrue(
        page.contains(
            "name=\"age\" type=\"text\" inputmode=\"numeric\" autocomplete=\"off\" value=\"45\""),
        page);
    assertTrue(page.contains("name=\"smoker\" value=\"yes\" checked"), page);
  }

  @Test
  void whatIsWrongInAnAddressIsNamed() throws Exception {
    for (String wrong :
        List.of(
            "?age=old",
            "?infected=perhaps",
            "?matters-union=120",
            "?counted-union=lefs",
            "?wish=nothing",
            "?from=9&to=3",
            "?taken=some&taken=any")) {
      assertEquals(422, running.get("/compare" + wrong).statusCode(), wrong);
      assertEquals(422, running.get("/api/v1/options" + wrong).statusCode(), wrong);
    }
  }

  @Test
  void theFirstPageComesWithoutATable() throws Exception {
    assertTrue(page("/compare").contains("Which methods, for which patient?"));
    assertFalse(page("/compare").contains("<table"));
  }
}
