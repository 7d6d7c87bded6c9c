package gapwise.server.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.server.testing.SharedServer;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Claims over the API, on the demonstration base, which is invented. */
class ClaimApiTest {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();
  private static final String DIRECT =
      "?a=bone-transport&says=more&outcome=primary-union&b=induced-membrane";

  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static JsonNode verdict(String query) throws Exception {
    HttpResponse<String> answer = running.get("/api/v1/claim" + query);
    assertEquals(200, answer.statusCode(), answer.body());
    return MAPPER.readTree(answer.body());
  }

  private static JsonNode refused(String query) throws Exception {
    HttpResponse<String> answer = running.get("/api/v1/claim" + query);
    assertEquals(422, answer.statusCode(), answer.body());
    assertTrue(
        answer
            .headers()
            .firstValue("Content-Type")
            .orElse("")
            .startsWith("application/problem+json"));
    return MAPPER.readTree(answer.body());
  }

  /** Studies 54 (20 of 22, 19 of 20) and 55 (12 of 14, 10 of 15) of the demonstration base. */
  @Test
  void theVerdictHoldsTheSentenceTheCautionsAndEveryKindOfEvidence() throws Exception {
    JsonNode verdict = verdict(DIRECT);
    assertTrue(
        verdict.get("sentence").asText().startsWith("2 studies with 71 patients or limbs have"));
    assertFalse(verdict.get("cautions").isEmpty());
    assertFalse(verdict.get("lowersCertainty").isEmpty());
    assertEquals(2, verdict.at("/direct/numbers/studies").asInt());
    assertEquals(71, verdict.at("/direct/numbers/patients").asInt());
    assertEquals("open", verdict.at("/direct/numbers/interval").asText());
    assertTrue(verdict.at("/direct/numbers/lower").asDouble() < 1);
    assertTrue(verdict.at("/direct/numbers/upper").asDouble() > 1);
    assertFalse(verdict.at("/indirect").has("numbers"));
    assertTrue(verdict.at("/indirect/sentences/0").asText().startsWith("No path"));
    assertEquals(2, verdict.at("/separate/methods").size());
    assertTrue(verdict.at("/separate/caution").asText().contains("not a comparison"));
    // Three allowances by means of series, then patients with series: together, and of each method.
    assertEquals(6, verdict.get("setAgainstEachOther").size());
    assertEquals(2, verdict.get("groupsOfPatients").size());
    assertTrue(verdict.get("definitions").size() > 1);
    assertEquals("definition", verdict.at("/couldBeAskedInstead/0/parameter").asText());
    assertTrue(verdict.at("/ways/lines/0/analyses").asInt() > 10);
    assertTrue(verdict.at("/settling/differenceIsUsual").asBoolean());
  }

  @Test
  void thePageAndTheApiSayTheSame() throws Exception {
    JsonNode verdict = verdict(DIRECT);
    // A page keeps a percent sign on the line of its number, which a program need not.
    String page = running.get("/claim" + DIRECT).body().replace('\u00a0', ' ');
    assertTrue(page.contains(verdict.get("sentence").asText()), page);
    for (JsonNode fact : verdict.get("lowersCertainty")) {
      assertTrue(page.contains(fact.asText()), fact.asText());
    }
    assertTrue(page.contains(verdict.at("/settling/sentence").asText()));
  }

  @Test
  void everyPlanOfTheVerdictIsTakenAndTheDirectOneGivesItsNumbersAgain() throws Exception {
    JsonNode verdict = verdict(DIRECT);
    List<JsonNode> plans = new ArrayList<>();
    for (String place :
        List.of("/direct", "/separate", "/setAgainstEachOther/0", "/ways/lines/0", "/settling")) {
      JsonNode plan = verdict.at(place + "/plan");
      assertTrue(plan.isObject(), place);
      plans.add(plan);
    }
    for (JsonNode plan : plans) {
      HttpResponse<String> answer =
          running.send(
              running
                  .request("/api/v1/syntheses")
                  .header("Content-Type", "application/json")
                  .POST(BodyPublishers.ofString(plan.toString())));
      assertEquals(200, answer.statusCode(), plan + answer.body());
      if (plan == plans.get(0)) {
        JsonNode shown = MAPPER.readTree(answer.body()).at("/summary/shown");
        assertEquals(shown.get("estimate"), verdict.at("/direct/numbers/estimate"));
        assertEquals(shown.get("lower"), verdict.at("/direct/numbers/lower"));
      }
    }
  }

  @Test
  void theDifferenceThatWouldMatterAndTheDefinitionAreTaken() throws Exception {
    JsonNode verdict = verdict(DIRECT + "&differ=5&definition=three-cortices");
    assertEquals(5, verdict.at("/settling/difference").asDouble());
    assertFalse(verdict.at("/settling/differenceIsUsual").asBoolean());
    assertEquals("three-cortices", verdict.at("/claim/evidence/definition").asText());
    assertTrue(verdict.get("definitions").isEmpty());
  }

  @Test
  void aClaimThatCannotBeExaminedIsRefusedWithTheReasonAndWhatCouldBeAsked() throws Exception {
    JsonNode clocks =
        refused("?a=bone-transport&says=less&outcome=time-to-union&b=induced-membrane");
    assertTrue(clocks.get("detail").asText().contains("Times on different clocks"));
    assertEquals("different-clocks", clocks.at("/problems/0/code").asText());
    assertEquals("clock", clocks.at("/problems/1/where").asText());
    assertTrue(clocks.at("/problems/1/message").asText().endsWith("clock=injury"));
    JsonNode empty = refused("?a=bone-transport&outcome=external-fixation-time&b=induced-membrane");
    assertEquals("nothing-reported", empty.at("/problems/0/code").asText());
  }

  @Test
  void missingAndUnknownPartsAreToldAllAtOnce() throws Exception {
    assertEquals("missing-field", refused("").at("/problems/0/code").asText());
    JsonNode unknown = refused("?a=nothing&b=neither&outcome=union&says=x&differ=many");
    assertEquals(3, unknown.get("problems").size(), unknown::toString);
  }

  @Test
  void aDifferenceThatIsNoNumberIsRefused() throws Exception {
    assertEquals("not-a-number", refused(DIRECT + "&differ=many").at("/problems/0/code").asText());
  }
}
