package gapwise.server.page.studies;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.SharedServer;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlainWordsPageTest {
  @RegisterExtension static final SharedServer running = SharedServer.withStudies();

  private static HttpResponse<String> get(String path, String... headers) throws Exception {
    HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(running.address(path)));
    if (headers.length > 0) {
      request.headers(headers);
    }
    return HttpClient.newHttpClient().send(request.build(), HttpResponse.BodyHandlers.ofString());
  }

  @Test
  void wordsBecomeFiltersThatStandInTheAddress() throws Exception {
    HttpResponse<String> answer =
        get("/studies?q=union+bone+transport+5-8+cm+infected+distal+tibia+with+smokers");
    assertEquals(303, answer.statusCode());
    assertEquals(
        "/studies?outcome=union&method=bone-transport&from=5&to=8&infected=yes&segment=43"
            + "&q=smokers&aside=with",
        answer.headers().firstValue("Location").orElseThrow());
  }

  @Test
  void theAddressOfFiltersIsNotReadAgain() throws Exception {
    HttpResponse<String> answer = get("/studies?method=bone-transport&q=smokers&aside=with");
    assertEquals(200, answer.statusCode());
    assertTrue(answer.body().contains("Left aside as joining words: with."));
  }

  @Test
  void aPartOfThePageAsksForAWholeOneWhenWordsWereUnderstood() throws Exception {
    HttpResponse<String> answer = get("/studies?q=allograft&order=title", "HX-Request", "true");
    assertEquals(
        "/studies?order=title&method=allograft",
        answer.headers().firstValue("HX-Redirect").orElseThrow());
  }

  @Test
  void thatAnyWordWasEnoughIsSaidOnTheListAndBesideWhatIsPooledFromIt() throws Exception {
    String page = get("/studies?q=invented+income").body();
    assertTrue(
        page.contains("No group here has all the words “invented” and “income” together"), page);
    assertTrue(page.contains("Found nowhere here: “income”."), page);
    String pooled = get("/pooled?outcome=union&q=invented+income").body();
    assertTrue(pooled.contains("Found nowhere here: “income”."), pooled);
    String map = get("/map?q=invented+income").body();
    assertTrue(map.contains("Found nowhere here: “income”."), map);
    assertFalse(get("/studies?q=invented+series").body().contains("loose-words"));
  }

  @Test
  void whenNothingFitsThePageSaysWhatTakingOneFilterOffWouldLeave() throws Exception {
    String page = get("/studies?method=bone-transport&q=nothinglikethis").body();
    assertTrue(page.contains("without “nothinglikethis”: 8 groups"), page);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"/studies", "/studies.csv", "/studies.xlsx", "/pooled", "/api/v1/studies"})
  void moreLettersThanASearchTakesAreRefusedWithTheLimit(String path) throws Exception {
    HttpResponse<String> answer = running.get(path + "?q=" + "x".repeat(2001));
    assertEquals(422, answer.statusCode(), answer.body());
    assertTrue(
        answer.body().contains("Found 2,001 letters; a search takes at most 2,000."),
        answer.body());
    assertEquals(200, running.get("/studies?q=" + "x".repeat(2000)).statusCode());
  }

  @Test
  void aFilterRepeatedHundredsOfTimesIsRefusedWithTheLimit() throws Exception {
    StringBuilder query = new StringBuilder();
    for (int i = 0; i < 101; i++) {
      query.append("&segment=").append(i);
    }
    HttpResponse<String> answer = running.get("/studies?" + query.substring(1));
    assertEquals(422, answer.statusCode());
    assertTrue(answer.body().contains("takes at most 100"), answer.body());
  }
}
