package gapwise.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.store.database.DatabaseAddress;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Kills a process that writes, at moments of its own, and looks at what it left. A killed process
 * is not a power cut: that the disk keeps what it was told to flush is SQLite's promise under
 * synchronous=FULL (https://www.sqlite.org/pragma.html#pragma_synchronous), not checked here.
 */
@Timeout(3600)
class StoreCrashTest {
  private static final int PARTS = 3;
  private static final int KILLS = Integer.getInteger("kills", 5);
  private static final int WRITES_BESIDE_ANOTHER = 60;
  private static final int MOST_ACKNOWLEDGEMENTS_BEFORE_A_KILL = 150;

  @TempDir Path home;
  private Optional<StorePlace> kept = Optional.empty();

  /** Where the records of one test are. */
  StorePlace newPlace(Path folder) {
    return StorePlace.of(folder);
  }

  private StorePlace place() {
    if (kept.isEmpty()) {
      kept = Optional.of(newPlace(home));
    }
    return kept.get();
  }

  private DocumentStore open() {
    return DocumentStore.open(place(), Clock.systemUTC(), Expected.ANYTHING);
  }

  @Test
  void whateverWasAcknowledgedIsThereAfterEachOfSeveralKills() throws Exception {
    Random random = new Random(20260301);
    int reached = 0;
    for (int kill = 0; kill < KILLS; kill++) {
      int killAfter = 1 + random.nextInt(MOST_ACKNOWLEDGEMENTS_BEFORE_A_KILL);
      // Every process but the first goes on where another was killed.
      int acknowledged = writeUntilKilled(killAfter, reached);
      reached = checkWhatIsLeft(acknowledged);
    }
  }

  @Test
  void twoProcessesWriteToOneHomeAndNothingOfEitherIsLostThoughOneIsKilled() throws Exception {
    try (DocumentStore store = open()) {
      int mine = 0;
      Process other = start(0);
      int theirs = -1;
      try (BufferedReader said = other.inputReader(StandardCharsets.UTF_8)) {
        while (theirs < WRITES_BESIDE_ANOTHER) {
          String line = said.readLine();
          assertNotNull(line, "the process ended by itself after " + theirs);
          theirs = Integer.parseInt(line);
          store.write(List.of(Write.put("study", "mine" + mine++, "{}")), "bea", "beside another");
        }
      } finally {
        assertTrue(other.toHandle().destroyForcibly());
        other.waitFor();
      }
      for (int number = 0; number <= theirs; number++) {
        assertEquals(
            json(number), store.latest("study", key(number, 0)).orElseThrow().json().orElseThrow());
      }
      for (int number = 0; number < mine; number++) {
        assertTrue(store.latest("study", "mine" + number).isPresent());
      }
      List<Long> changes = new ArrayList<>();
      store.changesAfter(0, version -> changes.add(version.change()));
      assertEquals(changes.size(), store.lastChange(), "one log numbers the changes of both");
      assertTrue(store.soundnessCheck().run().orElseThrow().isSound());
    }
  }

  @Test
  void aHomeThatAnotherProcessHasOpenIsNotPutBackFromABackup() throws Exception {
    Process other = start(0);
    try (BufferedReader said = other.inputReader(StandardCharsets.UTF_8)) {
      assertNotNull(said.readLine());
      Path backup = home.resolve("copies/b.db");
      Backup.write(place(), backup);
      StoreUnusableException refused =
          assertThrows(
              StoreUnusableException.class, () -> Restore.of(backup, place(), Clock.systemUTC()));
      assertEquals("store-in-use", refused.problem().code());
    } finally {
      assertTrue(other.toHandle().destroyForcibly());
      other.waitFor();
    }
  }

  /** The number of the last write that the process said was done. */
  private int writeUntilKilled(int killAfter, int from) throws IOException, InterruptedException {
    Process process = start(from);
    int last = from - 1;
    try (BufferedReader said = process.inputReader(StandardCharsets.UTF_8)) {
      for (int count = 0; count < killAfter; count++) {
        String line = said.readLine();
        assertNotNull(line, "the process ended by itself after " + count);
        last = Integer.parseInt(line);
      }
      // By its handle: the process's own method would also throw away what it said before.
      assertTrue(process.toHandle().destroyForcibly());
      // What it still managed to say counts as acknowledged too.
      for (String line = said.readLine(); line != null; line = said.readLine()) {
        last = Integer.parseInt(line);
      }
    }
    assertTrue(process.waitFor() != 0, "the process was not killed");
    return last;
  }

  /** The number with which writing should go on. */
  private int checkWhatIsLeft(int acknowledged) {
    try (DocumentStore store = open()) {
      assertTrue(store.soundnessCheck().run().orElseThrow().isSound());
      Map<String, String> there = new HashMap<>();
      store.forEachLatest(
          "study", version -> there.put(version.id().key(), version.json().orElseThrow()));
      for (int number = 0; number <= acknowledged; number++) {
        for (int part = 0; part < PARTS; part++) {
          assertEquals(json(number), there.get(key(number, part)));
        }
      }
      if (acknowledged >= 0) {
        String kept = store.workingCopies().find("draft", "one").orElseThrow().json();
        assertTrue(
            kept.equals(json(acknowledged)) || kept.equals(json(acknowledged + 1)),
            "what was kept last is there whole");
      }
      List<Long> changes = new ArrayList<>();
      store.changesAfter(0, version -> changes.add(version.change()));
      // A write that was under way is there whole or not at all, and at most one was under way.
      assertEquals(0, changes.size() % PARTS);
      int writes = changes.size() / PARTS;
      assertTrue(writes == acknowledged + 1 || writes == acknowledged + 2, "writes: " + writes);
      assertEquals(changes.size(), store.lastChange());
      return writes;
    }
  }

  private Process start(int from) throws IOException {
    return new ProcessBuilder(
            ProcessHandle.current().info().command().orElse("java"),
            "-Xmx128m",
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            Writing.class.getName(),
            home.toString(),
            Integer.toString(from),
            place().database().map(DatabaseAddress::url).orElse(""))
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .start();
  }

  private static String key(int number, int part) {
    return "S" + number + "-" + part;
  }

  private static String json(int number) {
    return "{\"n\":" + number + ",\"words\":\"" + "bone ".repeat(number % 300) + "\"}";
  }

  /** Writes for ever, saying the number of each write when it is done. */
  static final class Writing {
    public static void main(String[] arguments) {
      StorePlace place =
          new StorePlace(
              Path.of(arguments[0]),
              arguments.length < 3 || arguments[2].isEmpty()
                  ? Optional.empty()
                  : Optional.of(DatabaseAddress.of(arguments[2], Optional.empty())));
      try (DocumentStore store = DocumentStore.open(place, Clock.systemUTC(), Expected.ANYTHING)) {
        for (int number = Integer.parseInt(arguments[1]); number < Integer.MAX_VALUE; number++) {
          List<Write> writes = new ArrayList<>();
          for (int part = 0; part < PARTS; part++) {
            writes.add(Write.put("study", key(number, part), json(number)));
          }
          store.write(writes, "ann", "until killed");
          // What somebody is at work on is as safe once it is answered.
          int seen = store.workingCopies().find("draft", "one").map(c -> c.version()).orElse(0);
          store.workingCopies().keep("draft", "one", json(number), "ann", seen).orElseThrow();
          System.out.println(number);
          System.out.flush();
        }
      } catch (StoreUnusableException failure) {
        System.out.println(failure.problem().code());
        System.exit(2);
      }
    }
  }
}
