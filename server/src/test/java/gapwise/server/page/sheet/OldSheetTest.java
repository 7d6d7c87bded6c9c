package gapwise.server.page.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.curation.SaveAnswer;
import gapwise.evidence.Study;
import gapwise.server.home.Home;
import gapwise.server.testing.Invented;
import gapwise.server.web.WebServer;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A printed sheet whose address is opened after the evidence has changed. */
class OldSheetTest {
  private static final String ASKED =
      "/sheet?whole=yes&method=bone-transport&method=induced-membrane&aspect=union&made=";

  @TempDir private Path folder;

  private static String get(WebServer server, String path)
      throws IOException, InterruptedException {
    HttpResponse<String> answer =
        HttpClient.newHttpClient()
            .send(
                HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + server.port() + path))
                    .build(),
                HttpResponse.BodyHandlers.ofString());
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body().replaceAll("[\\s\u00a0]+", " ");
  }

  @Test
  void itShowsTheNumbersOfTodayAndWhatHasChangedSince() throws IOException, InterruptedException {
    List<Study> studies = Invented.studies();
    try (Home home = Home.open(folder, Clock.systemUTC())) {
      home.base().saveAll(studies.iterator(), "reviewer", "for a test", List.of());
      long made = home.base().lastChange();
      try (WebServer server = WebServer.start(home, "127.0.0.1", 0, "test")) {
        String fresh = get(server, ASKED + made);
        assertTrue(fresh.contains("No study behind its numbers has changed since"), fresh);

        Study gone = studies.get(0);
        SaveAnswer removed =
            home.base().remove(gone.id(), "A. Curator", "It was withdrawn by its journal.", 1);
        assertTrue(removed instanceof SaveAnswer.Saved);
        String later = get(server, ASKED + made);
        assertTrue(
            later.contains(gone.citation().label() + ": withdrawn on")
                || later.contains(gone.id() + "): withdrawn on"),
            later);
        assertTrue(later.contains("by A. Curator. It was withdrawn by its journal."), later);
        assertTrue(later.contains(", is now "), later);
        assertFalse(later.contains("No study behind its numbers has changed since"));
        assertTrue(get(server, ASKED + (made + 900)).contains("has not come to change"), "future");
      }
    }
  }
}
