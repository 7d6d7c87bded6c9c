package gapwise.server.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Study;
import gapwise.server.testing.DamagedDatabase;
import gapwise.server.testing.Invented;
import gapwise.server.testing.RunningServer;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Over the network, too, a damaged record is refused by name and never shown or counted. */
class DamagedRecordTest {
  private static final List<Study> STUDIES = Invented.studies();
  private static final String DAMAGED = STUDIES.get(3).id();

  @TempDir static Path folder;
  private static RunningServer running;

  @BeforeAll
  static void start() throws Exception {
    Path home = folder.resolve("home");
    RunningServer.with(home, STUDIES).close();
    DamagedDatabase.changeLetterIn(home, DAMAGED + "\",\"citation\"");
    running = RunningServer.empty(home);
  }

  @AfterAll
  static void stop() {
    running.close();
  }

  @Test
  void itsPageSaysThatItIsDamaged() throws Exception {
    for (String path :
        List.of("/studies/" + DAMAGED, "/api/v1/studies/" + DAMAGED, "/pooled?outcome=union")) {
      HttpResponse<String> answer = running.get(path);
      assertEquals(503, answer.statusCode(), path);
      assertTrue(answer.body().contains("This record is damaged"), answer::body);
      assertTrue(answer.body().contains(DAMAGED), answer::body);
      assertFalse(answer.body().contains(folder.toString()), "no path of the server");
    }
  }

  @Test
  void otherStudiesAreShown() throws Exception {
    assertEquals(200, running.get("/studies/" + STUDIES.get(4).id()).statusCode());
  }

  @Test
  void everyPageNamesTheDamagedRecordAndSaysWhatToDo() throws Exception {
    for (String path :
        List.of("/", "/studies", "/map", "/case", "/import", "/method", "/studies/" + DAMAGED)) {
      String page = running.get(path).body();
      assertTrue(page.contains("A record is damaged."), path);
      assertTrue(page.contains("study " + DAMAGED + ", version 1"), path);
      assertTrue(page.contains("Put the last sound backup back"), path);
      assertFalse(page.contains(folder.toString()), "no path of the server");
    }
  }

  @Test
  void aSoundBaseTellsOfNoDamage(@TempDir Path other) throws Exception {
    try (RunningServer sound = RunningServer.with(other, STUDIES)) {
      assertFalse(sound.get("/").body().contains("class=\"notice\""));
    }
  }
}
