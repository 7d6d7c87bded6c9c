package gapwise.server.page.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.SharedServer;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * That every result says how its studies were read, and can be asked of fewer. Of the demonstration
 * base every second study is checked by a second person, and none is agreed.
 */
@Timeout(300)
class ReadStandsTest {
  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static final String CLAIM =
      "/claim?a=bone-transport&says=more&outcome=primary-union&b=induced-membrane";
  private static final String COMPARE = "/compare?from=6&to=6&method=bone-transport&whole=yes";

  private static String plain(String address) throws Exception {
    HttpResponse<String> answer = running.get(address);
    assertEquals(200, answer.statusCode(), address);
    return answer.body().replaceAll("<[^>]+>", " ").replaceAll("\\s+", " ");
  }

  private static void holds(String page, String words) {
    assertTrue(page.contains(words), words + " in " + page);
  }

  @ParameterizedTest
  @CsvSource({
    "/pooled?outcome=union",
    "/by-size?outcome=union",
    "/funnel?outcome=union",
    "/over-time?outcome=time-to-union&clock=frame-on",
    CLAIM,
    COMPARE,
    "/sheet?from=6&to=6&method=bone-transport&whole=yes"
  })
  void aResultSaysHowItsStudiesWereRead(String address) throws Exception {
    String page = plain(address);
    holds(page, "checked by a second person,");
    holds(page, "extracted once");
    String fewer = plain(address + "&status=verified");
    holds(fewer, "checked by a second person");
    assertTrue(!fewer.contains("are extracted once"), fewer);
  }

  @Test
  void onTheAgreedAloneThereIsNothingAndALabelThatTakesItOff() throws Exception {
    String page = plain("/pooled?outcome=union&status=agreed");
    holds(page, "On the agreed alone");
    holds(page, "No usable number");
    holds(page, "Take studies of every standing");
    holds(plain(CLAIM + "&status=agreed"), "Gapwise");
    assertEquals(422, running.get("/pooled?outcome=union&status=certain").statusCode());
  }

  @Test
  void programsAreToldTheSame() throws Exception {
    String json = running.get("/api/v1/result.json?outcome=union&status=verified").body();
    assertTrue(
        json.replaceAll("\\s", "")
            .matches("(?s).*\"extraction\":\\{\"agreed\":0,\"checked\":[1-9].*"),
        json.substring(0, Math.min(2000, json.length())));
  }
}
