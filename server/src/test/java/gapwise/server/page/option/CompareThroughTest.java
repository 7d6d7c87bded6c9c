package gapwise.server.page.option;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.SharedServer;
import java.net.http.HttpResponse;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Networks of studies and adjusting beside the table, over the demonstration base. */
class CompareThroughTest {
  @RegisterExtension private static final SharedServer SERVER = SharedServer.withDemonstration();

  private static final String ASKED =
      "?method=bone-transport&method=induced-membrane&method=printed-scaffold"
          + "&method=vascularised-bone-flap&aspect=union&aspect=infection";

  private static String body(String path) throws Exception {
    HttpResponse<String> answer = SERVER.get(path);
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body().replace("&amp;", "&").replaceAll("[\\s\u00a0]+", " ");
  }

  private static String fetched() throws Exception {
    String part = body("/compare/through" + ASKED);
    while (part.contains("hx-get=\"/compare/through?")) {
      part = body("/compare/through" + ASKED);
    }
    return part;
  }

  @Test
  void theTableComesWithoutThemAndFetchesThemWhenTheyAreReached() throws Exception {
    String page = body("/compare" + ASKED + "&from=2.5&to=30" + "&whole=yes");
    assertTrue(page.contains("hx-get=\"/compare/through?"), page);
    assertTrue(page.contains("hx-trigger=\"revealed\""), page);
    assertTrue(page.contains("<table class=\"rows options\">"), page);
    assertTrue(page.contains("&whole=yes\">Work them out</a></p></noscript>"), page);
  }

  @Test
  void eachPairIsToldWithTheSentenceOfItsClaim() throws Exception {
    String part = fetched();
    assertFalse(part.contains("<html"), part);
    Matcher line =
        Pattern.compile(
                "data-head=\"In words\">([^<]*)</td> <td data-head=\"All of it\"><a"
                    + " href=\"([^\"]*)\"")
            .matcher(part);
    int lines = 0;
    while (line.find()) {
      lines++;
      String told = line.group(1).substring(line.group(1).indexOf(": ") + 2);
      String claim = body(line.group(2));
      assertTrue(claim.contains(told), told + " in " + line.group(2));
    }
    assertTrue(lines >= 2, part);
    assertTrue(body("/compare" + ASKED + "&whole=yes&through=yes").contains("id=\"through\""));
  }
}
