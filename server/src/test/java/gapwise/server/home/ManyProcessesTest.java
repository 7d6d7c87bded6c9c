package gapwise.server.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.search.IndexTrace;
import gapwise.server.Gapwise;
import gapwise.server.testing.RunningServer;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Commands in processes of their own beside a server on the same home. All studies are invented.
 */
@Timeout(180)
class ManyProcessesTest {
  private static final Duration UNTIL_SHOWN = Duration.ofSeconds(2);

  @TempDir Path folder;

  /** What a command said and its exit code. */
  private record Ended(int exit, String said) {}

  private static Process start(List<String> words) throws IOException {
    List<String> command =
        new ArrayList<>(
            List.of(
                ProcessHandle.current().info().command().orElse("java"),
                "-Xmx256m",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                Gapwise.class.getName()));
    command.addAll(words);
    return new ProcessBuilder(command).redirectErrorStream(true).start();
  }

  private static Ended ended(Process process) throws IOException, InterruptedException {
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Ended(process.waitFor(), said);
  }

  private static Ended run(String... words) throws IOException, InterruptedException {
    return ended(start(List.of(words)));
  }

  /** The sheets of invented studies of one group each, in a folder of this name. */
  private List<String> sheets(String name, int studies) throws IOException {
    Path sheets = Files.createDirectories(folder.resolve(name));
    StringBuilder rows = new StringBuilder("study_id,title\r\n");
    StringBuilder arms = new StringBuilder("study_id,arm_id,method\r\n");
    for (int number = 0; number < studies; number++) {
      String id = name + number;
      rows.append(id).append(",Invented ").append(id).append("\r\n");
      arms.append(id).append(",A,autograft\r\n");
    }
    return List.of(
        Files.writeString(sheets.resolve("studies.csv"), rows).toString(),
        Files.writeString(sheets.resolve("arms.csv"), arms).toString());
  }

  private String[] importing(String name, int studies, Path home) throws IOException {
    List<String> words = new ArrayList<>(List.of("import", "--home", home.toString()));
    words.addAll(sheets(name, studies));
    return words.toArray(String[]::new);
  }

  @Test
  void whatACommandImportsIsShownByTheServerWithinTwoSecondsAndExportedBesideIt() throws Exception {
    Path home = folder.resolve("home");
    try (RunningServer running = RunningServer.withStudies(home)) {
      assertEquals(404, running.get("/studies/fresh0").statusCode());
      Ended imported = run(importing("fresh", 3, home));
      long stored = System.nanoTime();
      assertEquals(0, imported.exit(), imported.said());
      int status = running.get("/studies/fresh0").statusCode();
      while (status == 404 && System.nanoTime() - stored < UNTIL_SHOWN.toNanos()) {
        status = running.get("/studies/fresh0").statusCode();
      }
      assertEquals(200, status, "shown within two seconds");
      assertTrue(running.get("/studies?q=fresh1").body().contains("fresh1"));

      Path tables = folder.resolve("tables");
      Ended exported = run("export", "--csv", tables.toString(), "--home", home.toString());
      assertEquals(0, exported.exit(), exported.said());
      assertTrue(exported.said().contains("19 studies written"), exported.said());
      String written = Files.readString(tables.resolve("studies.csv"));
      running.close();
      Path after = folder.resolve("after");
      Ended alone = run("export", "--csv", after.toString(), "--home", home.toString());
      assertEquals(0, alone.exit(), alone.said());
      assertEquals(written, Files.readString(after.resolve("studies.csv")));
    }
  }

  @Test
  void aPlanIsRunBesideAServerAndGivesWhatItGivesAlone() throws Exception {
    Path home = folder.resolve("home");
    Path plan =
        Files.writeString(
            folder.resolve("plan.json"),
            "{\"measure\":\"proportion\",\"source\":{\"evidence\":{\"outcome\":\"union\"}}}");
    String[] words = {"run", plan.toString(), "--home", home.toString()};
    Ended beside;
    try (RunningServer running = RunningServer.withStudies(home)) {
      beside = run(words);
      assertEquals(200, running.get("/studies").statusCode());
    }
    assertEquals(0, beside.exit(), beside.said());
    assertEquals(beside.said(), run(words).said());
  }

  @Test
  void ofTwoImportsAtOnceNoStudyIsLostAndBothAreToldSo() throws Exception {
    Path home = folder.resolve("home");
    Process one = start(List.of(importing("one", 300, home)));
    Process two = start(List.of(importing("two", 300, home)));
    Ended first = ended(one);
    Ended second = ended(two);
    assertEquals(0, first.exit(), first.said());
    assertEquals(0, second.exit(), second.said());
    assertTrue(first.said().contains("300 studies added"), first.said());
    assertTrue(second.said().contains("300 studies added"), second.said());
    try (Home open = Home.openExisting(home, Clock.systemUTC());
        Hold hold = open.hold()) {
      assertEquals(602, open.base().lastChange(), "600 studies and the records of two imports");
      List<String> ids = new ArrayList<>();
      hold.evidence().studies().forEach(kept -> ids.add(kept.study().id()));
      assertEquals(600, ids.size());
    }
  }

  @Test
  void ofTwoThatReplaceOneStudyAtOnceTheSecondIsAskedOrFollowsTheFirst() throws Exception {
    Path home = folder.resolve("home");
    assertEquals(0, run(importing("same", 1, home)).exit());
    List<Process> both = new ArrayList<>();
    for (String title : List.of("Loud", "Louder")) {
      List<String> words = new ArrayList<>(List.of(importing("same", 1, home)));
      words.add("--replace");
      Path mine = Files.createDirectories(folder.resolve(title));
      Path sheet = mine.resolve("studies.csv");
      Files.writeString(sheet, "study_id,title\r\nsame0," + title + "\r\n");
      words.set(3, sheet.toString());
      both.add(start(words));
    }
    for (Process each : both) {
      Ended ended = ended(each);
      assertEquals(0, ended.exit(), ended.said());
      assertTrue(ended.said().contains("Replaced: same0"), ended.said());
    }
    try (Records records = Records.openExisting(home, Clock.systemUTC())) {
      assertEquals(3, records.studies().history("same0").size(), "each version is there");
    }
  }

  @Test
  void whatNeedsTheHomeAloneSaysSoWhileAServerHasIt() throws Exception {
    Path home = folder.resolve("home");
    Path backup = folder.resolve("copy.db");
    try (RunningServer running = RunningServer.withStudies(home)) {
      assertEquals(0, run("backup", backup.toString(), "--home", home.toString()).exit());
      Ended restore = run("restore", backup.toString(), "--home", home.toString());
      assertEquals(1, restore.exit());
      assertTrue(restore.said().contains("this needs it alone"), restore.said());
      Ended reindex = run("reindex", "--home", home.toString());
      assertEquals(1, reindex.exit());
      assertTrue(reindex.said().contains("in use by another running copy"), reindex.said());
      assertEquals(200, running.get("/studies").statusCode());
    }
    assertEquals(0, run("restore", backup.toString(), "--home", home.toString()).exit());
    // A command that needs no index is the first to open what was put back.
    Records.openExisting(home, Clock.systemUTC()).close();
    assertEquals(0, IndexTrace.lastChange(home.resolve("index")), "the index is made anew");
  }
}
