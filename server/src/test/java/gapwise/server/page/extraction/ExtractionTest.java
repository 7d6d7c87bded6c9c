package gapwise.server.page.extraction;

import static gapwise.server.page.extraction.TwoReaders.PAPER;
import static gapwise.server.page.extraction.TwoReaders.STUDY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.RunningServer;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** An invented paper extracted by two people and settled by a third, by forms alone. */
@Timeout(120)
class ExtractionTest {
  @TempDir Path folder;

  private static void holds(String page, String sentence) {
    assertTrue(
        TwoReaders.plain(page).contains(sentence), sentence + " in " + TwoReaders.plain(page));
  }

  private static String page(RunningServer running, String path) throws Exception {
    HttpResponse<String> answer = running.get(path);
    assertEquals(200, answer.statusCode(), TwoReaders.plain(answer.body()));
    return answer.body();
  }

  private RunningServer readTwice() throws Exception {
    RunningServer running = RunningServer.empty(folder);
    TwoReaders.open(running);
    TwoReaders.extract(running, "AB", Map.of());
    TwoReaders.extract(running, "cd", Map.of("c.3.events", "8", "c.2.label", "pegs"));
    return running;
  }

  @Test
  void whatTwoPeopleReadIsSettledAndBecomesTheAgreedRecord() throws Exception {
    try (RunningServer running = readTwice()) {
      holds(page(running, PAPER), "AB has handed in, CD has handed in.");
      TwoReaders.begin(running, "EF");
      String settling = page(running, PAPER + "/settle?who=EF");
      holds(settling, "differed 2 times, of which 0 are settled");
      assertEquals(
          422,
          TwoReaders.settle(running, "EF", "outcomes.1-1.events", "first", "", "").statusCode());
      assertEquals(
          303,
          TwoReaders.settle(running, "EF", "outcomes.1-1.events", "first", "", "Table 2 says nine")
              .statusCode());
      assertEquals(
          303, TwoReaders.settle(running, "EF", "arms.1-1.label", "second", "", "").statusCode());
      holds(page(running, PAPER + "/settle?who=EF"), "Everything that differed is settled.");
      HttpResponse<String> end =
          TwoReaders.post(running, PAPER + "/finish", "who", "EF", "why", "reconciled");
      assertEquals(303, end.statusCode(), TwoReaders.plain(end.body()));
      String told = page(running, PAPER);
      holds(told, "Agreed, settled by EF.");
      holds(told, "EF, who did not extract it, settles what differs.");
      holds(told, "Table 2 says nine");
      String study = page(running, "/studies/" + STUDY);
      holds(study, "Read apart by AB and CD, settled by EF.");
      holds(page(running, "/api/v1/studies/" + STUDY), "\"status\":\"agreed\"");
      String json = page(running, "/api/v1/studies/" + STUDY + "/extraction");
      holds(json, "\"first\":\"9\",\"second\":\"8\"");
      holds(json, "\"why\":\"Table 2 says nine\",\"by\":\"EF\"");
      holds(
          page(running, PAPER + "/differences.csv"),
          "events,AB,9,CD,8,first,9,Table 2 says nine,EF");
      String agreement = page(running, "/extraction/agreement.csv");
      assertTrue(agreement.contains("outcomes,events,1,1,0,1,0,0.0,"), agreement);
      assertTrue(agreement.contains("arms,label,1,0,0,0,1,,"), agreement);
      holds(page(running, "/extraction/agreement"), "One paper");
    }
  }
}
