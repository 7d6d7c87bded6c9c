package gapwise.server.page.extraction;

import static gapwise.server.page.extraction.TwoReaders.PAPER;
import static gapwise.server.page.extraction.TwoReaders.STUDY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.home.Home;
import gapwise.server.testing.RunningServer;
import java.io.StringWriter;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * That neither of two people sees what the other extracts, and that no choice of anybody is lost.
 */
@Timeout(120)
class BlindnessTest {
  /** Stands in the form of one person and nowhere else. */
  private static final String SECRET = "pegs of the far side";

  @TempDir Path folder;

  private static Map<String, String> secret() {
    return Map.of("c.2.label", SECRET);
  }

  @Test
  void whatOneExtractedIsOnNoPageAndInNoAnswerBeforeTheSettlingHasBegun() throws Exception {
    try (RunningServer running = RunningServer.empty(folder)) {
      TwoReaders.open(running);
      TwoReaders.extract(running, "AB", secret());
      String form = TwoReaders.form(running, "AB");
      TwoReaders.extract(running, "CD", Map.of());
      for (String path :
          List.of(
              PAPER,
              PAPER + "?who=CD",
              PAPER + "/settle?who=CD",
              PAPER + "/differences.csv",
              "/extraction",
              "/extraction/agreement",
              "/extraction/agreement.csv",
              "/desk",
              "/studies",
              "/api/v1/studies/" + STUDY,
              "/api/v1/studies/" + STUDY + "/extraction",
              "/api/v1/studies/" + STUDY + "/history",
              form + "?who=CD",
              form + "/hand-in?who=CD",
              form + "/table?whole=yes&who=CD",
              "/desk/0123456789abcdef0123456789abcdef?who=CD",
              "/desk/0123456789ab")) {
        String body = running.get(path).body();
        assertFalse(body.contains(SECRET), path);
        assertFalse(body.contains(form.replace("/desk/", "")), path + " tells the address");
      }
      assertEquals(404, running.get(form + "?who=CD").statusCode());
      assertEquals(200, running.get(form + "?who=ab").statusCode());
      assertEquals(403, TwoReaders.post(running, PAPER + "/draft", "who", "EF").statusCode());
      assertEquals(403, TwoReaders.handIn(running, form, "CD").statusCode());
      assertEquals(
          409, TwoReaders.settle(running, "CD", "arms.1-1.label", "first", "", "x").statusCode());
    }
  }

  @Test
  void noExportCarriesAnExtractionThatTheOtherMustNotSee() throws Exception {
    try (RunningServer running = RunningServer.empty(folder)) {
      TwoReaders.open(running);
      TwoReaders.extract(running, "AB", secret());
    }
    assertFalse(exported().contains("extraction"), "neither content nor who has handed in");
    try (RunningServer running = RunningServer.empty(folder)) {
      TwoReaders.extract(running, "CD", Map.of());
      TwoReaders.begin(running, "EF");
    }
    String carried = exported();
    assertTrue(carried.contains(SECRET) && carried.contains("\"extraction-paper\""), carried);
  }

  private String exported() throws Exception {
    try (Home home = Home.open(folder, Clock.systemUTC())) {
      StringWriter target = new StringWriter();
      home.carriedLines().write(target);
      return target.toString();
    }
  }

  @Test
  void onceItIsBeingSettledNobodyHandsInAnyMore() throws Exception {
    try (RunningServer running = RunningServer.empty(folder)) {
      TwoReaders.open(running);
      assertEquals(409, TwoReaders.post(running, PAPER + "/begin", "who", "EF").statusCode());
      TwoReaders.extract(running, "AB", Map.of());
      assertEquals(409, TwoReaders.post(running, PAPER + "/begin", "who", "EF").statusCode());
      TwoReaders.extract(running, "CD", Map.of("c.3.events", "8"));
      TwoReaders.begin(running, "EF");
      assertEquals(409, TwoReaders.post(running, PAPER + "/draft", "who", "AB").statusCode());
      assertEquals(403, TwoReaders.settle(running, "AB", "x", "first", "", "x").statusCode());
      assertEquals(
          409, TwoReaders.post(running, PAPER + "/finish", "who", "EF", "why", "x").statusCode());
    }
  }

  @Test
  void ofTwoWhoSettleOneFieldAtOnceOneIsToldThatItIsSettled() throws Exception {
    try (RunningServer running = RunningServer.empty(folder)) {
      TwoReaders.open(running);
      TwoReaders.extract(running, "AB", Map.of());
      TwoReaders.extract(running, "CD", Map.of("c.3.events", "8"));
      TwoReaders.begin(running, "EF");
      ExecutorService two = Executors.newFixedThreadPool(2);
      try {
        Callable<HttpResponse<String>> first =
            () -> TwoReaders.settle(running, "EF", "outcomes.1-1.events", "first", "", "nine");
        Callable<HttpResponse<String>> second =
            () -> TwoReaders.settle(running, "EF", "outcomes.1-1.events", "second", "", "eight");
        int kept = 0;
        int refused = 0;
        for (Future<HttpResponse<String>> one : two.invokeAll(List.of(first, second))) {
          kept += one.get().statusCode() == 303 ? 1 : 0;
          refused += one.get().statusCode() == 409 ? 1 : 0;
        }
        assertEquals(1, kept);
        assertEquals(1, refused);
      } finally {
        two.shutdown();
      }
    }
  }

  @Test
  void aStudyThatChangedMeanwhileIsNotOverwrittenUnseen() throws Exception {
    try (RunningServer running = RunningServer.empty(folder)) {
      TwoReaders.open(running);
      TwoReaders.extract(running, "AB", Map.of());
      TwoReaders.extract(running, "CD", Map.of());
      TwoReaders.begin(running, "AB");
      HttpResponse<String> begun = TwoReaders.post(running, "/desk", "study", STUDY);
      String draft = begun.headers().firstValue("location").orElseThrow();
      TwoReaders.post(running, draft, "c.1.title", "Pegs of the moon", "c.2.method", "autograft");
      assertEquals(303, TwoReaders.handIn(running, draft, "GH").statusCode());
      HttpResponse<String> refused =
          TwoReaders.post(running, PAPER + "/finish", "who", "AB", "why", "reconciled");
      assertEquals(409, refused.statusCode());
      String page = TwoReaders.plain(running.get(PAPER + "/settle?who=AB").body());
      assertTrue(page.contains("Version 1 of the study was written since"), page);
      assertEquals(
          303,
          TwoReaders.post(running, PAPER + "/follow", "who", "AB", "version", "1").statusCode());
      assertEquals(
          303,
          TwoReaders.post(running, PAPER + "/finish", "who", "AB", "why", "reconciled")
              .statusCode());
      String told = TwoReaders.plain(running.get(PAPER).body());
      assertTrue(
          told.contains(
              "AB, who is one of the two who extracted it, settles what differs for both"),
          told);
      assertTrue(told.contains("The agreed record , version 2 of the study"), told);
    }
  }

  @Test
  void onePersonCannotSayThatTwoHaveAgreed() throws Exception {
    try (RunningServer running = RunningServer.empty(folder)) {
      HttpResponse<String> begun = TwoReaders.post(running, "/desk", "study", STUDY);
      String draft = begun.headers().firstValue("location").orElseThrow();
      TwoReaders.post(running, draft + "/column", "sheet", "studies", "column", "status");
      TwoReaders.post(
          running,
          draft,
          "c.1.title",
          "Pegs of the moon",
          "c.1.status",
          "agreed",
          "c.2.method",
          "autograft");
      HttpResponse<String> refused = TwoReaders.handIn(running, draft, "GH");
      assertEquals(422, refused.statusCode());
      assertTrue(
          TwoReaders.plain(refused.body())
              .contains("One person alone cannot say that two have agreed."));
    }
  }
}
