package gapwise.server.page.kept;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.page.reference.KeptFiles;
import gapwise.server.testing.RunningServer;
import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Questions kept from their pages, and what is said of them when a study changes. */
class KeptQuestionsTest {
  private static final String UNION = "outcome=primary-union&method=bone-transport";
  private static final Pattern ID = Pattern.compile("/kept/([0-9a-f]{12})\"");

  @TempDir Path folder;

  private static String keep(RunningServer running, String page, String query, String title)
      throws Exception {
    HttpResponse<String> kept =
        KeptFiles.post(running, "/kept", "page", page, "query", query, "title", title, "who", "AB");
    assertEquals(303, kept.statusCode(), kept.body());
    Matcher id = ID.matcher(running.get("/kept").body());
    assertTrue(id.find());
    return id.group(1);
  }

  /** The words of a page without its marks. */
  private static String words(String page) {
    return page.replaceAll("<[^>]*>", " ").replace('\u00a0', ' ').replaceAll("\\s+", " ");
  }

  private static void holds(String page, String words) {
    assertTrue(words(page).contains(words), words(page));
  }

  private static void withdraw(RunningServer running, String study) throws Exception {
    HttpResponse<String> withdrawn =
        KeptFiles.post(
            running,
            "/studies/" + study + "/withdraw",
            "who",
            "AB",
            "why",
            "told twice",
            "seen",
            "1");
    assertEquals(303, withdrawn.statusCode(), withdrawn.body());
  }

  @Test
  void aStudyWithdrawnMovesNumbersToWhatThePageThenSaysAndTheNewAnswerIsTaken() throws Exception {
    try (RunningServer running = RunningServer.withDemonstration(folder)) {
      holds(running.get("/pooled?" + UNION).body(), "Keep this question");
      String id = keep(running, "/pooled", UNION, "Union after transport");
      holds(running.get("/kept").body(), "as it was");
      String question = "/pooled?" + UNION + "&kept=" + id;
      holds(running.get("/kept/" + id + "/mark?at=" + at(UNION)).body(), "as it was");
      assertTrue(running.get(question).body().contains("/kept/" + id + "/mark"));
      withdraw(running, "invented-03");
      assertTrue(running.get("/kept").body().contains("/kept/" + id + "/line"));
      String moved = running.get("/kept/" + id + "?whole=yes").body();
      holds(moved, "Studies that went");
      holds(moved, "Tamwhistle 2022");
      holds(running.get("/kept").body(), "numbers moved");
      Matcher now =
          Pattern.compile("data-head=\"Is\">([^<;]*); ([^<;]*); [^<]*</td>").matcher(moved);
      String page = words(running.get("/pooled?" + UNION).body());
      int numbers = 0;
      while (now.find()) {
        assertTrue(page.contains(words(now.group(1))), now.group(1) + " in " + page);
        assertTrue(page.contains(words(now.group(2))), now.group(2));
        numbers++;
      }
      assertTrue(numbers > 0, moved);
      holds(running.get("/kept/" + id + "/mark?at=" + at(UNION)).body(), "numbers moved");
      assertEquals("", running.get("/kept/" + id + "/mark?at=%2Fpooled%3Foutcome%3Dunion").body());
      HttpResponse<String> taken =
          KeptFiles.post(
              running, "/kept/" + id + "/take", "who", "CD", "why", "it was double", "seen", "1");
      assertEquals(303, taken.statusCode(), taken.body());
      holds(running.get("/kept").body(), "as it was");
      holds(running.get("/kept/" + id).body(), "it was double");
      holds(running.get("/kept/" + id).body(), "Version 2");
      HttpResponse<String> late =
          KeptFiles.post(
              running, "/kept/" + id + "/take", "who", "EF", "why", "me too", "seen", "1");
      assertEquals(422, late.statusCode());
      holds(late.body(), "Somebody else has taken another answer meanwhile");
    }
  }

  private static String at(String query) {
    return URLEncoder.encode("/pooled?" + query, StandardCharsets.UTF_8);
  }

  @Test
  void aQuestionThatHoldsNothingOfTheStudyStaysAsItWas() throws Exception {
    try (RunningServer running = RunningServer.withDemonstration(folder)) {
      keep(running, "/pooled", "outcome=flap-loss&method=allograft", "Nothing known");
      withdraw(running, "invented-03");
      holds(running.get("/kept?whole=yes").body(), "as it was");
      assertTrue(running.get("/api/v1/kept").body().contains("\"mark\":\"as-it-was\""));
    }
  }

  @Test
  void everyPageOfAnAnswerIsKeptATimeAndASheetAmongThem() throws Exception {
    try (RunningServer running = RunningServer.withDemonstration(folder)) {
      String methods = "from=4&to=8&method=induced-membrane&aspect=union";
      keep(running, "/by-size", "outcome=union&method=bone-transport", "By size");
      keep(running, "/over-time", "outcome=time-to-union&clock=frame-on", "Over time");
      keep(
          running,
          "/claim",
          "a=bone-transport&says=more&outcome=primary-union&b=induced-membrane",
          "A claim");
      keep(running, "/compare", methods, "Side by side");
      keep(running, "/sheet", methods + "&made=1&paper=letter", "The sheet");
      String list = running.get("/kept?whole=yes").body();
      holds(list, "The sheet");
      assertFalse(list.contains("made=1"), "an earlier print is no part of the question");
      assertFalse(words(list).contains("numbers moved"), list);
    }
  }

  @Test
  void whatCannotBeKeptIsSaidInWords() throws Exception {
    try (RunningServer running = RunningServer.empty(folder)) {
      holds(running.get("/kept").body(), "No question is kept yet.");
      String[][] wrong = {
        {"/studies", "outcome=union", "x", "No question can be kept of this page."},
        {"/pooled", "", "x", "Nothing is asked yet"},
        {"/pooled", "outcome=%zz", "x", "No question can be kept of this page."},
        {"/pooled", "outcome=unoin", "x", "unoin"},
        {"/pooled", "outcome=union", "", "Give the question a name"},
      };
      for (String[] one : wrong) {
        HttpResponse<String> answer =
            KeptFiles.post(
                running, "/kept", "page", one[0], "query", one[1], "title", one[2], "who", "AB");
        assertEquals(422, answer.statusCode(), one[1]);
        holds(answer.body(), one[3]);
      }
      assertEquals(404, running.get("/kept/00aa00aa00aa").statusCode());
      assertEquals(404, running.get("/kept/none").statusCode());
      String id = keep(running, "/pooled", "outcome=union", "Nothing yet");
      HttpResponse<String> dropped =
          KeptFiles.post(
              running, "/kept/" + id + "/drop", "who", "AB", "why", "not needed", "seen", "1");
      assertEquals(303, dropped.statusCode());
      assertEquals(404, running.get("/kept/" + id).statusCode());
    }
  }
}
