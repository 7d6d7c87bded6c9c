package gapwise.server.page.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.server.page.reference.KeptFiles;
import gapwise.server.testing.RunningServer;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A review written, changed and read; all of it is invented. */
class ReviewPageTest {
  @TempDir Path folder;

  private static HttpResponse<String> write(
      RunningServer running, String matters, String why, String seen) throws Exception {
    return KeptFiles.post(
        running,
        "/review",
        "title",
        "Gaps of the tibia",
        "population",
        "Adults after an injury",
        "intervention",
        "bone-transport",
        "comparator",
        "induced-membrane",
        "outcome-1",
        "primary-union",
        "matters-1",
        matters,
        "time-1",
        "last follow-up",
        "include",
        "adults\r\nfive patients or more",
        "from",
        "2.5",
        "design",
        "randomised",
        "person-1",
        "AB",
        "duty-1",
        "screens",
        "person-2",
        "GH",
        "duty-2",
        "extracts",
        "who",
        "AB",
        "why",
        why,
        "seen",
        seen);
  }

  private static void holds(String page, String words) {
    String plain = page.replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
    assertTrue(plain.contains(words), plain);
  }

  @Test
  void aReviewIsWrittenChangedAndToldFieldByField() throws Exception {
    try (RunningServer running = RunningServer.empty(folder)) {
      holds(running.get("/review").body(), "No review is written down here yet");
      assertEquals(303, write(running, "10", "planned", "0").statusCode());
      String page = running.get("/review").body();
      holds(page, "Adults after an injury");
      holds(page, "Interventions Bone transport in an external frame Comparators Induced");
      holds(page, "a difference of 10 of 100 matters");
      holds(page, "five patients or more");
      assertFalse(page.contains("Written after work had begun"), page);
      assertEquals(303, write(running, "5", "less would do", "1").statusCode());
      page = running.get("/review").body();
      holds(page, "less would do");
      assertFalse(page.contains("Amendment:"), "nothing was screened or extracted");
      HttpResponse<String> late = write(running, "7", "me too", "1");
      assertEquals(422, late.statusCode());
      holds(late.body(), "Somebody else has changed the review meanwhile");
      assertTrue(running.get("/review/edit").body().contains("value=\"5\""));
    }
  }

  @Test
  void aChangeAfterExtractionBeganIsAnAmendmentWithHowFarTheWorkHadCome() throws Exception {
    try (RunningServer running = RunningServer.withStudies(folder)) {
      write(running, "10", "planned", "0");
      holds(running.get("/review").body(), "Written after work had begun: 0 choices");
      write(running, "5", "less would do", "1");
      holds(running.get("/review").body(), "Amendment: when it was written, 0 choices");
      JsonNode json = JsonMapper.builder().build().readTree(running.get("/api/v1/review").body());
      assertTrue(json.path("versions").path(0).path("amendment").asBoolean());
      assertEquals(5, json.path("review").path("outcomes").path(0).path("matters").asDouble());
      assertEquals("of 100", json.path("review").path("outcomes").path(0).path("unit").asText());
    }
  }

  @Test
  void whoScreensIsToldWhatWaitsAndWhoDoesNotIsNot() throws Exception {
    try (RunningServer running = KeptFiles.server(folder)) {
      KeptFiles.kept(running, "four.ris", KeptFiles.twice(0) + KeptFiles.twice(1));
      write(running, "10", "planned", "0");
      String page = running.get("/review?who=ab").body();
      holds(page, "papers to read");
      assertTrue(page.contains("/screening/read?who=ab&amp;stage=title"), page);
      holds(running.get("/review?who=GH").body(), "Nothing waits for GH.");
      assertEquals(422, running.get("/review?who=%3C%3E").statusCode());
    }
  }

  @Test
  void everythingThatIsWrongIsSaidAtOnceAndNothingIsKept() throws Exception {
    try (RunningServer running = RunningServer.empty(folder)) {
      HttpResponse<String> answer =
          KeptFiles.post(
              running,
              "/review",
              "who",
              "AB",
              "why",
              "x",
              "outcome-1",
              "union",
              "matters-1",
              "100",
              "from",
              "5",
              "to",
              "4",
              "person-1",
              "<>",
              "intervention",
              "no-such-method");
      assertEquals(422, answer.statusCode());
      holds(answer.body(), "Give the review a title.");
      holds(answer.body(), "must be above 0, and below 100");
      holds(answer.body(), "Type the shorter length first.");
      holds(answer.body(), "stands in no list here");
      holds(running.get("/review").body(), "No review is written down here yet");
    }
  }

  @Test
  void theDifferencesOfTheReviewAreOfferedWhereOneIsAsked() throws Exception {
    try (RunningServer running = RunningServer.withDemonstration(folder)) {
      String compare = "/compare?method=induced-membrane&aspect=union&whole=yes";
      assertFalse(running.get(compare).body().contains("The review names"));
      write(running, "7", "planned", "0");
      String page = running.get(compare).body();
      holds(page, "The review names differences that matter: Primary union 7 of 100.");
      assertTrue(page.contains("matters-union=7"), page);
      holds(running.get(compare + "&matters-union=7").body(), "come from the review");
    }
  }
}
