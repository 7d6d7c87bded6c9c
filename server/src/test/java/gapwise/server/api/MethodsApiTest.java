package gapwise.server.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.server.testing.SharedServer;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Methods in words and the origin of results, through the doors of the server. */
class MethodsApiTest {
  @RegisterExtension static final SharedServer running = SharedServer.withStudies();

  private static final JsonMapper JSON = JsonMapper.builder().build();

  private HttpResponse<String> post(String path, String body)
      throws IOException, InterruptedException {
    return running.send(
        running
            .request(path)
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofString(body)));
  }

  @Test
  void theMethodsOfAQuestionAreOfferedAndAreThoseOfItsPlan() throws Exception {
    String page = running.get("/pooled?outcome=union").body();
    assertTrue(page.contains("href=\"/api/v1/methods.txt?outcome=union\""), page);
    HttpResponse<String> text = running.get("/api/v1/methods.txt?outcome=union");
    assertEquals(
        "text/plain;charset=utf-8",
        text.headers().firstValue("Content-Type").orElseThrow().replace(" ", "").toLowerCase());
    String plan = running.get("/api/v1/plan.json?outcome=union").body();
    assertEquals(text.body(), post("/api/v1/methods", plan).body());
    assertTrue(text.body().startsWith("Methods\n\nFrom the evidence base, groups"), text.body());
    assertTrue(text.body().contains("The evidence base stood at change "), text.body());
    assertTrue(text.body().contains("\n\nReferences\n\n1. "), text.body());
  }

  @Test
  void linesOverLengthAndFunnelsHaveTheirMethodsToo() throws Exception {
    for (String kind : List.of("by-size", "funnel")) {
      String page = running.get("/" + kind + "?outcome=union").body();
      String path = "/api/v1/" + kind + "-methods.txt?outcome=union";
      assertTrue(page.contains("href=\"" + path + "\""), kind);
      String plan = running.get("/api/v1/" + kind + "-plan.json?outcome=union").body();
      assertEquals(running.get(path).body(), post("/api/v1/methods", plan).body());
    }
  }

  @Test
  void aPlanThatIsWrongIsRefusedAsAResultWouldBe() throws Exception {
    String plan = "{\"measure\":\"proportion\"}";
    HttpResponse<String> refused = post("/api/v1/methods", plan);
    assertEquals(422, refused.statusCode());
    assertEquals(post("/api/v1/syntheses", plan).body(), refused.body());
    assertEquals(422, running.get("/api/v1/methods.txt").statusCode());
  }

  @Test
  void aResultNamesTheProgramAndOfTheEvidenceBaseItsState() throws Exception {
    JsonNode result = JSON.readTree(running.get("/api/v1/result.json?outcome=union").body());
    assertEquals("Gapwise", result.at("/software/name").asText());
    assertFalse(result.at("/software/version").asText().isBlank());
    assertTrue(result.at("/evidence/change").asLong() > 0, result::toString);
    assertTrue(result.at("/evidence/date").asText().matches("[0-9]{4}-[0-9]{2}-[0-9]{2}"));
    String rows =
        "{\"source\":{\"rows\":[{\"study\":\"A\",\"events\":3,\"total\":9},"
            + "{\"study\":\"B\",\"events\":5,\"total\":12}]}}";
    JsonNode own = JSON.readTree(post("/api/v1/syntheses", rows).body());
    assertEquals(result.get("software"), own.get("software"));
    assertFalse(own.has("evidence"));
  }
}
