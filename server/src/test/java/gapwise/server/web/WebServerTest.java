package gapwise.server.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.server.admission.Admission;
import gapwise.server.testing.RunningServer;
import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WebServerTest {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();
  @TempDir static Path folder;
  private static RunningServer running;

  @BeforeAll
  static void start() {
    running = RunningServer.withStudies(folder);
  }

  @AfterAll
  static void stop() {
    running.close();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/",
        "/studies",
        "/studies?outcome=union&from=5&to=8&method=bone-transport&order=title&page=9",
        "/studies/invented-03",
        "/pooled",
        "/pooled?outcome=union",
        "/pooled?outcome=time-to-union&method=bone-transport",
        "/pooled?outcome=refracture",
        "/map",
        "/map?outcome=union&infected=yes",
        "/map?view=comparisons",
        "/desk",
        "/overlaps",
        "/references",
        "/studies/invented-03/versions",
        "/import",
        "/method"
      })
  void everyPageAnswersWithItsBannerItsCautionAndAStrictPolicy(String path) throws Exception {
    HttpResponse<String> page = running.get(path);
    assertEquals(200, page.statusCode());
    assertTrue(page.body().contains("This evidence base holds invented studies"), path);
    assertTrue(page.body().contains("Licensed surgeons and local protocols decide"), path);
    String policy = page.headers().firstValue("Content-Security-Policy").orElseThrow();
    assertTrue(policy.contains("default-src 'none'") && !policy.contains("unsafe"), policy);
    assertFalse(page.body().matches("(?s).*\\sstyle=\".*"), "no inline style in " + path);
    assertFalse(page.body().matches("(?s).*<script>.*"), "no inline script in " + path);
  }

  @Test
  void anEmptyBaseIsSaidToBeEmptyAndHasNoBannerOfInventedData(@TempDir Path other)
      throws Exception {
    try (RunningServer empty = RunningServer.empty(other)) {
      String page = empty.get("/").body();
      assertTrue(page.contains("There is no study here yet"));
      assertFalse(page.contains("This evidence base holds invented studies"));
    }
  }

  @Test
  void whatIsNotThereIsACalmPage() throws Exception {
    for (String path : new String[] {"/nowhere", "/studies/none-such", "/import/none-such"}) {
      HttpResponse<String> page = running.get(path);
      assertEquals(404, page.statusCode());
      assertTrue(page.body().contains("Not found"));
      assertFalse(page.body().contains("Exception"));
    }
  }

  @Test
  void aMethodThatAnAddressDoesNotTakeIs405() throws Exception {
    assertEquals(405, running.send(running.request("/studies").DELETE()).statusCode());
  }

  @Test
  void everythingWrongInAnAddressIsToldAtOnce() throws Exception {
    HttpResponse<String> page = running.get("/studies?from=8&to=5&method=magic&year-from=soon");
    assertEquals(422, page.statusCode());
    assertTrue(page.body().contains("runs backwards"));
    assertTrue(page.body().contains("magic"));
    assertTrue(page.body().contains("soon"));
  }

  @Test
  void aFormFromAnotherSiteIsRefused() throws Exception {
    HttpResponse<String> answer =
        running.send(
            running
                .request("/api/v1/syntheses")
                .header("Origin", "http://elsewhere.example")
                .POST(BodyPublishers.ofString("{}")));
    assertEquals(403, answer.statusCode());
  }

  @Test
  void aForeignNameForThisMachineReadsNothing() throws IOException {
    try (Socket socket = new Socket("127.0.0.1", running.server().port())) {
      OutputStream out = socket.getOutputStream();
      out.write(
          "GET / HTTP/1.1\r\nHost: elsewhere.example\r\nConnection: close\r\n\r\n"
              .getBytes(StandardCharsets.US_ASCII));
      out.flush();
      String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertTrue(answer.startsWith("HTTP/1.1 403"), answer);
    }
  }

  @Test
  void anUploadLargerThanTheLimitIs413() throws IOException {
    try (Socket socket = new Socket("127.0.0.1", running.server().port())) {
      OutputStream out = socket.getOutputStream();
      String head =
          "POST /import HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\nContent-Type:"
              + " multipart/form-data; boundary=x\r\nContent-Length: "
              + (Admission.LARGEST_UPLOAD_BYTES + 1)
              + "\r\n\r\n";
      out.write(head.getBytes(StandardCharsets.US_ASCII));
      out.flush();
      byte[] start = socket.getInputStream().readNBytes(12);
      assertEquals("HTTP/1.1 413", new String(start, StandardCharsets.US_ASCII));
    }
  }

  @Test
  void aWrongPlanIsProblemDetailsWithEveryReason() throws Exception {
    HttpResponse<String> answer =
        running.send(
            running
                .request("/api/v1/syntheses")
                .POST(BodyPublishers.ofString("{\"measure\":\"magic\",\"extra\":1}")));
    assertEquals(422, answer.statusCode());
    assertEquals(
        "application/problem+json", answer.headers().firstValue("Content-Type").orElseThrow());
    JsonNode body = MAPPER.readTree(answer.body());
    assertEquals(422, body.get("status").asInt());
    assertTrue(body.get("problems").size() >= 2, answer.body());
  }

  @Test
  void thePlanOfAPageGivesTheResultOfThePage() throws Exception {
    String question = "?outcome=union&method=bone-transport&from=5&to=8";
    String plan = running.get("/api/v1/plan.json" + question).body();
    HttpResponse<String> run =
        running.send(running.request("/api/v1/syntheses").POST(BodyPublishers.ofString(plan)));
    assertEquals(200, run.statusCode(), run.body());
    String result = running.get("/api/v1/result.json" + question).body();
    assertEquals(MAPPER.readTree(result), MAPPER.readTree(run.body()));
  }

  /** Every filter that an address can carry must be one that the plan's schema takes. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "infected=yes",
        "infected=no&infected=mixed",
        "bone=tibia&bone=femur",
        "segment=42&segment=43",
        "design=retrospective-series",
        "year-from=2000&year-to=2026",
        "from=2&to=8&match=centre",
        "match=unsized",
        "q=invented"
      })
  void everyFilterOfAPageIsTakenByItsPlan(String filters) throws Exception {
    for (String page : List.of("/pooled?outcome=union&", "/by-size?outcome=union&")) {
      String body = running.get(page + filters).body();
      assertFalse(body.contains("source.evidence"), page + filters);
    }
  }

  @Test
  void aPlanSentHereReadsNoFile() throws Exception {
    HttpResponse<String> answer =
        running.send(
            running
                .request("/api/v1/syntheses")
                .POST(
                    BodyPublishers.ofString(
                        "{\"measure\":\"proportion\",\"source\":{\"table\":\"secret.csv\"}}")));
    assertEquals(422, answer.statusCode());
    assertTrue(answer.body().contains("no-files-here"), answer.body());
  }

  @Test
  void methodsSideBySideAreSaidToBeNoComparison() throws Exception {
    String page = running.get("/pooled?outcome=union").body();
    assertTrue(page.contains("not a comparison"));
    // eight series of transport: n = 12, 18, ... 54, half of each infected at the start
    assertTrue(
        page.contains("<td data-head=\"Infected at the start\">132 of 264, 50 of 100</td>"), page);
    // means 4, 4.8, ... 9.6 cm, from 2 cm below to 3 cm above
    assertTrue(page.contains("6.8 cm (series 4 to 9.6); reported spread 2 to 12.6 cm"), page);
    assertTrue(page.contains("<td data-head=\"Designs\">retrospective series 8</td>"));
    String alone = running.get("/pooled?outcome=union&method=bone-transport").body();
    assertFalse(alone.contains("Why this is no comparison"));
  }
}
