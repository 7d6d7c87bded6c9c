package gapwise.server.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Study;
import gapwise.server.Gapwise;
import gapwise.server.testing.Invented;
import gapwise.server.testing.RealServer;
import gapwise.server.testing.RunningServer;
import gapwise.store.StorePlace;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Servers with homes of their own, and commands, on one PostgreSQL database. */
@Timeout(240)
class SharedDatabaseTest {
  private static final Duration UNTIL_SHOWN = Duration.ofSeconds(2);

  private static final Duration UNTIL_WARM = Duration.ofSeconds(60);

  @TempDir Path folder;

  /** What a command said and its exit code. */
  private record Ended(int exit, String said) {}

  private static Ended run(String database, String... words)
      throws IOException, InterruptedException {
    List<String> command =
        new ArrayList<>(
            List.of(
                ProcessHandle.current().info().command().orElse("java"),
                "-Xmx256m",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                Gapwise.class.getName()));
    command.addAll(List.of(words));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().put("GAPWISE_DATABASE", database);
    Process process = builder.start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Ended(process.waitFor(), said);
  }

  private static void fill(StorePlace place, List<Study> studies) {
    try (Records records = Records.open(place, Clock.systemUTC())) {
      records.base().saveAll(studies.iterator(), "reviewer", "for a test", List.of());
    }
  }

  /** The status of a page as soon as it is there, or when this time is over. */
  private static int statusUntil(RunningServer server, String page, Duration most)
      throws IOException, InterruptedException {
    long end = System.nanoTime() + most.toNanos();
    int status = server.get(page).statusCode();
    while (status == 404 && System.nanoTime() < end) {
      status = server.get(page).statusCode();
    }
    return status;
  }

  private static long changes(StorePlace place) {
    try (Records records = Records.openExisting(place, Clock.systemUTC())) {
      return records.base().lastChange();
    }
  }

  @Test
  void whatOneServerWritesTheOtherShowsWithinTwoSeconds() throws Exception {
    StorePlace one = RealServer.newPlace(folder.resolve("one"));
    StorePlace two = new StorePlace(folder.resolve("two"), one.database());
    StorePlace writing = new StorePlace(folder.resolve("writing"), one.database());
    try (RunningServer here = RunningServer.at(one);
        RunningServer there = RunningServer.at(two)) {
      // The first study has both servers load what they need, however long that takes.
      fill(writing, Invented.studies().subList(0, 1));
      String first = "/studies/" + Invented.studies().get(0).id();
      assertEquals(200, statusUntil(here, first, UNTIL_WARM));
      assertEquals(200, statusUntil(there, first, UNTIL_WARM));

      String page = "/studies/" + Invented.studies().get(1).id();
      assertEquals(404, here.get(page).statusCode());
      fill(writing, Invented.studies().subList(1, 16));
      assertEquals(200, statusUntil(here, page, UNTIL_SHOWN), "shown within two seconds");
      assertEquals(200, statusUntil(there, page, UNTIL_SHOWN), "shown within two seconds");
      assertEquals(here.get("/studies").body(), there.get("/studies").body());
    }
  }

  @Test
  void aServerSurvivesARestartOfTheDatabaseAndSaysMeanwhileThatItIsAway() throws Exception {
    Path data = folder.resolve("data");
    EmbeddedPostgres first = onFilesThatStay(data).start();
    int port = first.getPort();
    StorePlace place =
        new StorePlace(folder.resolve("home"), Optional.of(RealServer.address(first, "postgres")));
    try (RunningServer running = RunningServer.at(place)) {
      fill(
          new StorePlace(folder.resolve("writing"), place.database()),
          Invented.studies().subList(0, 3));
      first.close();
      List<Integer> statuses = new ArrayList<>();
      for (String path : List.of("/studies", "/desk", "/references", "/screening", "/history")) {
        HttpResponse<String> answer = running.get(path);
        statuses.add(answer.statusCode());
        assertFalse(answer.body().contains("Exception"), path);
        assertTrue(
            answer.statusCode() < 500 || answer.body().contains("The database server cannot be"),
            path + " " + answer.statusCode());
      }
      assertTrue(statuses.contains(503), statuses.toString());
      EmbeddedPostgres second = onFilesThatStay(data).setPort(port).start();
      try {
        assertEquals(200, running.get("/desk").statusCode());
        fill(
            new StorePlace(folder.resolve("writing"), place.database()),
            Invented.studies().subList(3, 5));
        String page = "/studies/" + Invented.studies().get(4).id();
        assertEquals(200, statusUntil(running, page, UNTIL_WARM), "it follows again");
      } finally {
        second.close();
      }
    }
  }

  private static EmbeddedPostgres.Builder onFilesThatStay(Path data) {
    return RealServer.asATeamRunsIt().setDataDirectory(data).setCleanDataDirectory(false);
  }

  @Test
  void commandsTakeTheDatabaseFromOneSettingAndMoveABaseThereAndBack() throws Exception {
    StorePlace place = RealServer.newPlace(folder.resolve("home"));
    String address = place.database().orElseThrow().url();
    Path old = folder.resolve("old");
    fill(StorePlace.of(old), Invented.studies());
    String file = folder.resolve("there.db").toString();
    String home = place.home().toString();
    assertEquals(0, run("", "backup", file, "--home", old.toString()).exit());
    Ended there = run(address, "restore", file, "--home", home);
    assertEquals(0, there.exit(), there.said());
    assertTrue(there.said().contains("PostgreSQL database base"), there.said());

    Path exported = folder.resolve("exported");
    Path before = folder.resolve("before");
    assertEquals(0, run("", "export", "--csv", before.toString(), "--home", old.toString()).exit());
    Ended export = run(address, "export", "--csv", exported.toString(), "--home", home);
    assertEquals(0, export.exit(), export.said());
    assertEquals(
        Files.readString(before.resolve("studies.csv")),
        Files.readString(exported.resolve("studies.csv")));

    Ended forgotten = run("", "export", "--csv", folder.resolve("x").toString(), "--home", home);
    assertEquals(1, forgotten.exit());
    assertTrue(forgotten.said().contains("GAPWISE_DATABASE"), forgotten.said());

    String back = folder.resolve("back.db").toString();
    assertEquals(0, run("", "backup", back, "--home", home, "--database", address).exit());
    Ended second =
        run(
            address,
            "restore",
            back,
            "--home",
            folder.resolve("new").toString(),
            "--database",
            "sqlite");
    assertEquals(0, second.exit(), second.said());
    try (Records records = Records.openExisting(folder.resolve("new"), Clock.systemUTC())) {
      assertEquals(changes(StorePlace.of(old)), records.base().lastChange());
    }
  }

  @Test
  void aPasswordInTheAddressIsRefusedAndNeverSaid() throws Exception {
    Ended refused =
        run("jdbc:postgresql://h/b?password=secret-word", "reindex", "--home", folder.toString());
    assertEquals(2, refused.exit(), refused.said());
    assertTrue(refused.said().contains("PGPASSWORD"), refused.said());
    assertFalse(refused.said().contains("secret-word"), refused.said());
  }
}
