package gapwise.server.page.screening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.page.reference.KeptFiles;
import gapwise.server.testing.RunningServer;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** References screened by forms alone; all are invented. */
@Timeout(120)
class ScreeningTest {
  private static final Pattern PAPER =
      Pattern.compile("name=\"paper\" value=\"(ref-[0-9a-f]{16})\"");

  @TempDir Path folder;

  private static String plain(String page) {
    return page.replaceAll("<[^>]+>", " ").replaceAll("\\s+", " ");
  }

  private static void holds(String page, String sentence) {
    assertTrue(plain(page).contains(sentence), sentence + " in " + plain(page));
  }

  private static String shown(RunningServer running, String who, String stage) throws Exception {
    String page = running.get("/screening/read?who=" + who + "&stage=" + stage).body();
    Matcher paper = PAPER.matcher(page);
    assertTrue(paper.find(), plain(page));
    return paper.group(1);
  }

  private static HttpResponse<String> choose(
      RunningServer running, String who, String stage, String paper, String choice)
      throws Exception {
    return KeptFiles.post(
        running, "/screening/read", "who", who, "stage", stage, "paper", paper, "choose", choice);
  }

  private static void chosen(
      RunningServer running, String who, String stage, String paper, String choice)
      throws Exception {
    HttpResponse<String> answer = choose(running, who, stage, paper, choice);
    assertEquals(303, answer.statusCode(), answer.body());
  }

  private RunningServer withFour() throws Exception {
    RunningServer running = KeptFiles.server(folder);
    KeptFiles.kept(running, "four.ris", KeptFiles.twice(0) + KeptFiles.twice(1));
    return running;
  }

  @Test
  void withoutReferencesThereIsNothingToScreen() throws Exception {
    try (RunningServer running = KeptFiles.server(folder)) {
      holds(running.get("/screening").body(), "No reference is kept yet");
      assertEquals(303, running.get("/screening/read").statusCode());
      holds(running.get("/screening/apart").body(), "nobody differs");
      holds(running.get("/screening/read?who=AB").body(), "Nothing is left for AB to read here.");
    }
  }

  @Test
  void nobodySeesWhatAnotherChoseAndTwoDecide() throws Exception {
    try (RunningServer running = withFour()) {
      String paper = shown(running, "AB", "title");
      chosen(running, "AB", "title", paper, "exclude");
      assertFalse(shown(running, "AB", "title").equals(paper));
      String other = running.get("/screening/read?who=CD&stage=title&paper=" + paper).body();
      assertFalse(plain(other).contains("AB"), plain(other));
      assertFalse(plain(other).contains("your choice so far"), plain(other));
      String own = running.get("/screening/read?who=AB&stage=title&paper=" + paper).body();
      holds(own, "Leave out (your choice so far)");
      assertFalse(running.get("/screening/apart").body().contains(paper));
      chosen(running, "CD", "title", paper, "keep");
      String apart = running.get("/screening/apart").body();
      holds(apart, "AB Leave out CD Keep");
      assertEquals(
          303,
          KeptFiles.post(
                  running,
                  "/screening/apart",
                  "who",
                  "EF",
                  "why",
                  "the abstract is silent",
                  "stage",
                  "title",
                  "paper",
                  paper,
                  "choose",
                  "keep")
              .statusCode());
      holds(running.get("/screening").body(), "1 of 4 papers decided.");
      assertEquals(paper, shown(running, "AB", "full-text"));
      holds(running.get("/screening").body(), "AB and CD chose alike on 0 of 1 paper");
    }
  }

  @Test
  void theFlowAndTheTableTellOfWhatWasLeftOut() throws Exception {
    try (RunningServer running = withFour()) {
      for (int i = 0; i < 4; i++) {
        String paper = shown(running, "AB", "title");
        String choice = i == 0 ? "exclude" : "keep";
        chosen(running, "AB", "title", paper, choice);
        chosen(running, "CD", "title", paper, choice);
      }
      String first = shown(running, "AB", "full-text");
      chosen(running, "AB", "full-text", first, "exclude Not after an injury");
      chosen(running, "CD", "full-text", first, "exclude Not after an injury");
      String second = shown(running, "AB", "full-text");
      chosen(running, "AB", "full-text", second, "keep");
      chosen(running, "CD", "full-text", second, "keep");
      String csv = running.get("/api/v1/screening-flow.csv").body();
      assertTrue(csv.contains("1,goes on,Records identified,,4,"), csv);
      assertTrue(csv.contains("2,leaves,Records left out,,1,"), csv);
      assertTrue(csv.contains("3,goes on,Reports sought in full,,3,"), csv);
      assertTrue(csv.contains("4,goes on,Reports assessed for eligibility,,2,"), csv);
      assertTrue(
          csv.contains("4,goes on,Reports assessed for eligibility,not decided yet,1,"), csv);
      assertTrue(csv.contains("4,leaves,Reports left out,Not after an injury,1,"), csv);
      assertTrue(csv.contains("5,goes on,Reports included,,1,"), csv);
      String out = running.get("/screening/left-out.csv").body();
      assertEquals(3, out.lines().count(), out);
      assertTrue(out.contains("Full text,Leave out,Not after an injury"), out);
      String svg = running.get("/api/v1/screening-flow.svg").body();
      String day = svg.replaceAll("(?s).*<dc:date>([-0-9]*).*", "$1");
      assertTrue(svg.contains("screening as it was on " + day + ", at change "), svg);
      holds(running.get("/screening").body(), "Screening goes on, so these counts will change.");
    }
  }

  @Test
  void whatCannotBeIsSaidInWords() throws Exception {
    try (RunningServer running = withFour()) {
      String paper = shown(running, "AB", "title");
      for (String[] wrong :
          new String[][] {
            {"", "title", paper, "keep", "Type your initials"},
            {"<b>", "title", paper, "keep", "Type initials or a short name"},
            {"AB", "third", paper, "keep", "There are two stages"},
            {"AB", "title", paper, "not-had", "This cannot be chosen here"},
            {"AB", "title", paper, "", "This cannot be chosen here"}
          }) {
        HttpResponse<String> answer = choose(running, wrong[0], wrong[1], wrong[2], wrong[3]);
        assertEquals(422, answer.statusCode(), answer.body());
        holds(answer.body(), wrong[4]);
      }
      assertEquals(404, choose(running, "AB", "title", "ref-none", "keep").statusCode());
      assertEquals(404, choose(running, "AB", "full-text", paper, "keep").statusCode());
      chosen(running, "AB", "title", paper, "keep");
      chosen(running, "CD", "title", paper, "unsure");
      for (String reason : new String[] {"exclude", "exclude 2", "exclude No such reason"}) {
        HttpResponse<String> answer = choose(running, "AB", "full-text", paper, reason);
        assertEquals(422, answer.statusCode(), reason);
        holds(answer.body(), "Say why the text stays out");
      }
      HttpResponse<String> settled =
          KeptFiles.post(
              running,
              "/screening/apart",
              "who",
              "EF",
              "why",
              "none differs",
              "stage",
              "title",
              "paper",
              paper,
              "choose",
              "keep");
      assertEquals(422, settled.statusCode());
      holds(settled.body(), "Nobody differs about this paper any more.");
    }
  }

  @Test
  void aTeamSetsItsReasonsAndWords() throws Exception {
    try (RunningServer running = withFour()) {
      HttpResponse<String> wrong =
          KeptFiles.post(
              running,
              "/screening/protocol",
              "who",
              "AB",
              "reasons",
              "1\n2\n3\n4\n5\n6\n7\n8\n9\n10");
      assertEquals(422, wrong.statusCode());
      holds(wrong.body(), "There are more than 9 lines.");
      HttpResponse<String> kept =
          KeptFiles.post(
              running,
              "/screening/protocol",
              "who",
              "AB",
              "question",
              "What joins a gap?",
              "reasons",
              "Not of limbs\r\nNo patients\r\n",
              "for",
              "splint*",
              "against",
              "sailors");
      assertEquals(303, kept.statusCode(), kept.body());
      holds(running.get("/screening").body(), "What joins a gap?");
      HttpResponse<String> late =
          KeptFiles.post(
              running, "/screening/protocol", "who", "CD", "reasons", "Other", "seen", "0");
      assertEquals(422, late.statusCode());
      holds(late.body(), "Somebody else has changed this meanwhile");
      String page = running.get("/screening/read?who=AB").body();
      assertTrue(page.contains("<mark class=\"speaks-for\">splints</mark>"), page);
      assertTrue(page.contains("<mark class=\"speaks-against\">sailors</mark>"), page);
    }
  }

  @Test
  void whatTheReviewLeavesOutIsOfferedAsReasonsAndKeptByAPersonOnly() throws Exception {
    try (RunningServer running = withFour()) {
      String[] review = {
        "title",
        "Gaps",
        "exclude",
        "a growing bone\nnot after an injury",
        "who",
        "AB",
        "why",
        "plan",
        "seen",
        "0"
      };
      assertFalse(running.get("/screening").body().contains("reasons=review"));
      assertEquals(303, KeptFiles.post(running, "/review", review).statusCode());
      String page = running.get("/screening").body();
      holds(page, "The review also leaves a study out for: a growing bone.");
      assertFalse(page.contains("another paper\na growing bone</textarea>"), page);
      String proposed = running.get("/screening?reasons=review").body();
      assertTrue(proposed.contains("another paper\na growing bone</textarea>"), proposed);
      holds(running.get("/review").body(), "The same patients as another paper");
      assertFalse(plain(running.get("/screening/read?who=AB").body()).contains("growing"));
    }
  }
}
