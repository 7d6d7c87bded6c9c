package gapwise.server.page.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.server.testing.SharedServer;
import java.net.http.HttpResponse;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** One definition of an outcome taken alone, on the demonstration base, which is invented. */
class DefinitionsTest {
  private static final String CODE = "bridging-on-computed-tomography";
  private static final String WORDS = "bridging on computed tomography";
  private static final String TAKEN = "&definition=" + CODE;
  private static final String UNION = "?outcome=union";

  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static String page(String address) throws Exception {
    HttpResponse<String> answer = running.get(address);
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body();
  }

  /** The number in brackets behind the words, with the address of the link that takes them. */
  private static Matcher choice(String page) {
    Matcher choice =
        Pattern.compile("<a href=\"([^\"]+)\">" + WORDS + "</a> \\((\\d+) of \\d+\\)")
            .matcher(page);
    assertTrue(choice.find(), page);
    return choice;
  }

  @Test
  void mixedDefinitionsAreSaidAndEachCanBeTakenAlone() throws Exception {
    String page = page("/pooled" + UNION);
    assertTrue(
        page.contains("do not all define this outcome alike, so they may not count the same thing"),
        page);
    Matcher choice = choice(page);
    assertEquals("/pooled" + (UNION + TAKEN).replace("&", "&amp;"), choice.group(1));
    int series = Integer.parseInt(choice.group(2));
    JsonNode plan =
        JsonMapper.builder().build().readTree(page("/api/v1/result.json" + UNION + TAKEN));
    assertEquals(series, plan.at("/data/studies").asInt());
    assertEquals(CODE, plan.at("/plan/source/evidence/definition").asText());
  }

  @Test
  void theDefinitionTakenStandsInTheTitleAsAChipAndInTheFormAndComesOff() throws Exception {
    String page = page("/pooled" + UNION + TAKEN);
    assertTrue(page.contains("defined by " + WORDS + "</h1>"), page);
    assertTrue(page.contains("<a href=\"/pooled?outcome=union\">defined by " + WORDS), page);
    assertTrue(page.contains("<input type=\"hidden\" name=\"definition\" value=\"" + CODE + "\">"));
    assertTrue(page.contains("It defines the outcome as"), "the others are left out, with why");
    assertFalse(page.contains("may not count the same thing"), page);
    assertTrue(page.contains("of every definition: the list does not part them"));
  }

  @Test
  void aDefinitionThatNoSeriesStatesIsNotDroppedButSaidToFindNothing() throws Exception {
    String page = page("/pooled" + UNION + "&definition=surgeons-opinion");
    assertTrue(page.contains("No usable number"), page);
    assertTrue(page.contains("Only series that define the outcome as chosen above"), page);
    assertTrue(page.contains(">" + WORDS + "</a>"), "the others are offered");
  }

  @Test
  void aDefinitionThatIsNoKindIsRefusedWithTheKindsThereAre() throws Exception {
    HttpResponse<String> answer = running.get("/pooled" + UNION + "&definition=somehow");
    assertEquals(422, answer.statusCode());
    assertTrue(answer.body().contains("three-cortices"), answer.body());
  }

  @Test
  void thePapersOwnWordsStandBesideEachKind() throws Exception {
    String page = page("/pooled" + UNION);
    assertTrue(page.contains("“bridging of two cortices and walking without pain”"), page);
  }

  @Test
  void severalDefinitionsAtOnceAreRefusedInWords() throws Exception {
    for (String path : new String[] {"/pooled", "/by-size", "/api/v1/forest.svg"}) {
      HttpResponse<String> answer = running.get(path + UNION + TAKEN + "&definition=other");
      assertEquals(422, answer.statusCode(), path);
      assertTrue(answer.body().contains("one definition at a time"), answer.body());
    }
  }

  @Test
  void thePageBySizeTakesADefinitionAndItsBandsAndLinksKeepIt() throws Exception {
    String mixed = page("/by-size" + UNION);
    assertTrue(
        mixed.contains(
            "do not all define this outcome alike, so they may not count the same thing"),
        mixed);
    assertEquals("/by-size" + (UNION + TAKEN).replace("&", "&amp;"), choice(mixed).group(1));
    String page = page("/by-size" + UNION + TAKEN);
    assertTrue(page.contains("defined by " + WORDS + ", by size</h1>"), page);
    String kept = TAKEN.replace("&", "&amp;");
    assertTrue(page.contains("href=\"/pooled?outcome=union" + kept + "\""), page);
    assertTrue(
        Pattern.compile("href=\"/pooled\\?outcome=union" + Pattern.quote(kept) + "&amp;(from|to)=")
            .matcher(page)
            .find(),
        "a band keeps it");
    assertTrue(page.contains("<input type=\"hidden\" name=\"definition\" value=\"" + CODE + "\">"));
  }

  @Test
  void theFunnelAndTheClaimHandTheDefinitionOn() throws Exception {
    String funnel = page("/funnel" + UNION + TAKEN);
    assertTrue(funnel.contains("defined by " + WORDS), funnel);
    String words = "three-cortices";
    String claim =
        page(
            "/claim?a=bone-transport&says=more&outcome=primary-union&b=induced-membrane"
                + "&definition="
                + words);
    assertTrue(
        claim.contains(
            "href=\"/pooled?outcome=primary-union&amp;method=bone-transport"
                + "&amp;method=induced-membrane&amp;definition="
                + words
                + "\""),
        claim);
    assertTrue(claim.contains("<input type=\"hidden\" name=\"definition\""), claim);
  }
}
