package gapwise.server.page.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.server.testing.SharedServer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Narrowing by a detail of the method, on the invented demonstration base. */
class MethodDetailsTest {
  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static String page(String path) throws Exception {
    var answer = running.get(path);
    assertEquals(200, answer.statusCode(), path);
    return answer.body().replace("&amp;", "&");
  }

  @ParameterizedTest
  @ValueSource(strings = {"/studies?", "/pooled?outcome=union&", "/by-size?outcome=union&"})
  void aDetailNarrowsAndStandsThereToBeTakenOff(String path) throws Exception {
    String narrowed = page(path + "detail=transport-levels%3Atrifocal");
    assertTrue(narrowed.contains("levels of transport: trifocal"), narrowed);
    String all = page(path.substring(0, path.length() - 1));
    assertEquals(path.startsWith("/studies"), all.contains("value=\"transport-levels:trifocal\""));
    assertTrue(narrowed.contains("value=\"transport-levels:trifocal\""), narrowed);
    assertTrue(!all.contains("levels of transport: trifocal"), all);
  }

  @Test
  void wordsOfOneDetailAreAlternativesAndDetailsNarrowOneAnother() throws Exception {
    int trifocal = groups("detail=transport-levels%3Atrifocal");
    int bifocal = groups("detail=transport-levels%3Abifocal");
    assertEquals(
        trifocal + bifocal,
        groups("detail=transport-levels%3Atrifocal&detail=transport-levels%3Abifocal"));
    int rings = groups("detail=transport-levels%3Atrifocal&detail=fixation%3Aring");
    int hexapods = groups("detail=transport-levels%3Atrifocal&detail=fixation%3Ahexapod");
    assertTrue(rings > 0 && rings < trifocal, rings + " of " + trifocal);
    assertEquals(trifocal, rings + hexapods);
  }

  @Test
  void aPooledResultIsAskedAgainByAWordOfADetailAndKeepsOtherDetails() throws Exception {
    String asked = page("/pooled?outcome=primary-union&detail=transport-levels%3Atrifocal");
    String link = "href=\"/pooled?outcome=primary-union&detail=transport-levels%3Abifocal\"";
    assertTrue(asked.contains(link), asked);
    assertTrue(
        page("/pooled?outcome=primary-union&detail=fixation%3Aring")
            .contains(
                "href=\"/pooled?outcome=primary-union&detail=fixation%3Aring"
                    + "&detail=transport-levels%3Atrifocal\""));
    assertTrue(asked.contains("<h1>Primary union: trifocal (levels of transport)</h1>"), asked);
  }

  private static int groups(String filters) throws Exception {
    JsonNode answer =
        JsonMapper.builder().build().readTree(running.get("/api/v1/studies?" + filters).body());
    Matcher found =
        Pattern.compile("(\\d+) groups? of patients in").matcher(page("/studies?" + filters));
    assertTrue(found.find(), filters);
    assertEquals(answer.path("groups").asInt(), Integer.parseInt(found.group(1)));
    return answer.path("groups").asInt();
  }

  @Test
  void severalLevelsTypedInPlainWordsAreAFilterOfTheList() throws Exception {
    var typed = running.get("/studies?q=multifocal+transport");
    assertEquals(
        "/studies?detail=transport-levels:trifocal&detail=transport-levels:more-than-two"
            + "&method=bone-transport",
        typed.headers().firstValue("Location").orElseThrow().replace("%3A", ":"));
  }

  @Test
  void aWordThatIsNoneIsRefusedWithTheNearest() throws Exception {
    var answer = running.get("/api/v1/studies?detail=fixation%3Arings");
    assertEquals(422, answer.statusCode());
    assertTrue(answer.body().contains("fixation:ring"), answer.body());
  }

  private static final String OF_TRANSPORT = "outcome=primary-union&method=bone-transport";
  private static final String SPLIT = OF_TRANSPORT + "&split=transport-levels";

  @Test
  void aPooledResultIsSplitByADetailAndSaysThatThisIsNoComparison() throws Exception {
    assertTrue(
        page("/pooled?" + OF_TRANSPORT).contains("href=\"/pooled?" + SPLIT + "\""),
        "the whole offers it");
    String split = page("/pooled?" + SPLIT);
    assertTrue(split.contains("These are separate groups of patients, not a comparison"), split);
    assertTrue(split.contains("<th scope=\"col\">Levels of transport</th>"), split);
    for (String name : new String[] {"bifocal", "trifocal"}) {
      assertTrue(split.contains("In sentences<span class=\"unseen\">: " + name), name);
    }
    assertTrue(split.contains("split by levels of transport"), split);
    assertTrue(split.contains("href=\"/studies?" + SPLIT + "\""), split);
    String one = OF_TRANSPORT + "&detail=transport-levels%3Abifocal";
    assertTrue(split.contains("href=\"/pooled?" + one + "\""), split);
  }

  @Test
  void theFilesOfASplitResultAreSplitToo() throws Exception {
    String csv = page("/api/v1/forest.csv?" + SPLIT);
    assertTrue(csv.contains("Levels of transport, trifocal"), csv);
    String plan = page("/api/v1/plan.json?" + SPLIT);
    assertTrue(plan.contains("\"subgroup\" : \"transport-levels\""), plan);
    assertTrue(
        page("/api/v1/methods.txt?" + SPLIT).contains("groups of the column \"transport-levels\""));
  }

  @Test
  void severalMethodsAreNotSplitByADetailAndThePageSaysWhy() throws Exception {
    String page = page("/pooled?outcome=primary-union&split=transport-levels");
    assertTrue(page.contains("a detail is split within one method"), page);
    assertTrue(page.contains("<th scope=\"col\">Method</th>"), page);
  }

  @Test
  void aSplitByWhatIsNoDetailOfListedWordsIsRefused() throws Exception {
    var answer = running.get("/api/v1/forest.csv?" + OF_TRANSPORT + "&split=transport-level");
    assertEquals(422, answer.statusCode());
    assertTrue(answer.body().contains("transport-levels"), answer.body());
  }
}
