package gapwise.server.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.budget.Budget;
import gapwise.budget.Limit;
import gapwise.server.admission.Bounds;
import gapwise.server.testing.RunningServer;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A plan that costs more than a request may, and one whose sender leaves. */
@Timeout(120)
class BudgetOfRequestsTest {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();
  private static final String PATH = "/api/v1/syntheses";

  @TempDir Path folder;

  private RunningServer server(int computing, Duration waiting, Budget budget) {
    Bounds usual = Bounds.standard();
    return RunningServer.within(
        new Bounds(
            usual.connections(),
            usual.header(),
            usual.body(),
            usual.answer(),
            usual.answerBytes(),
            usual.spoolBytes(),
            computing,
            waiting,
            budget),
        folder);
  }

  /** A regression on many moderators; its test by permutation may take minutes. */
  private static String plan(int permutations) {
    Random random = new Random(1);
    ObjectNode plan = MAPPER.createObjectNode();
    plan.put("measure", "reported-effect");
    ObjectNode columns = plan.putObject("columns");
    columns.put("study", "study").put("effect", "effect").put("standardError", "standardError");
    ArrayNode moderators = plan.putArray("moderators");
    ArrayNode rows = plan.putObject("source").putArray("rows");
    "abcdefghijklmno".chars().forEach(letter -> moderators.add(Character.toString(letter)));
    for (int i = 0; i < 20; i++) {
      ObjectNode row = rows.addObject();
      row.put("study", "s" + i).put("effect", random.nextGaussian()).put("standardError", 0.5);
      moderators.forEach(name -> row.put(name.asText(), random.nextDouble()));
    }
    plan.putObject("permutationTest").put("permutations", permutations).put("seed", 1);
    return plan.toString();
  }

  private static HttpResponse<String> run(RunningServer running, String plan) throws Exception {
    return running.send(
        running
            .request(PATH)
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofString(plan)));
  }

  @Test
  void aPlanThatTakesTooLongIsToldTheLimitAndTheWayOut() throws Exception {
    Budget second = Budget.STANDARD.with(Limit.SECONDS, 1);
    try (RunningServer running = server(1, Duration.ofSeconds(5), second)) {
      HttpResponse<String> answer = run(running, plan(100_000));
      assertEquals(422, answer.statusCode(), answer.body());
      JsonNode problem = MAPPER.readTree(answer.body()).at("/problems/0");
      assertEquals("takes-too-long", problem.get("code").asText());
      assertTrue(problem.get("message").asText().contains("limit: 1 s"), answer.body());
      assertEquals(200, run(running, plan(100)).statusCode(), "a short plan after it");
    }
  }

  @Test
  void aPlanWhoseSenderLeavesGivesItsPlaceToTheNext() throws Exception {
    // Long enough for the lasting plan to wait for a short one that came before it.
    try (RunningServer running = server(1, Duration.ofSeconds(3), Budget.UNLIMITED)) {
      until(200, running);
      String lasting = plan(100_000);
      try (Socket line = new Socket(InetAddress.getLoopbackAddress(), running.server().port())) {
        line.getOutputStream()
            .write(
                ("POST "
                        + PATH
                        + " HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: "
                        + lasting.length()
                        + "\r\n\r\n"
                        + lasting)
                    .getBytes(StandardCharsets.US_ASCII));
        line.getOutputStream().flush();
        until(503, running); // it has the only place
      }
      until(200, running);
    }
  }

  /**
   * Asks for a short plan until it is answered so, which must be before the long one could be done:
   * that computes for a minute on one processor.
   */
  private static void until(int status, RunningServer running) throws Exception {
    long end = System.nanoTime() + Duration.ofSeconds(20).toNanos();
    HttpResponse<String> answer = run(running, plan(100));
    while (answer.statusCode() != status) {
      assertTrue(answer.statusCode() == 200 || answer.statusCode() == 503, answer.body());
      assertTrue(System.nanoTime() < end, "still " + answer.statusCode());
      answer = run(running, plan(100));
    }
  }
}
