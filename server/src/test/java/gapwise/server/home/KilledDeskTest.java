package gapwise.server.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.curation.StudyVersion;
import gapwise.desk.KeptDraft;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.store.StorePlace;
import gapwise.store.database.DatabaseAddress;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Kills a process again and again while it keeps drafts, hands them in, imports files and settles
 * what two extractors read, and looks at what it left. How often: {@code -Dkills=300}.
 */
class KilledDeskTest {
  private static final int KILLS = Integer.getInteger("kills", 3);
  private static final int MOST_LINES_BEFORE_A_KILL = 60;

  /** Longest wait after a line, so that kills fall between lines too. */
  private static final int MOST_SPINS = 3_000_000;

  @TempDir Path folder;

  /** What the process said was done, all kills together. */
  private final Map<String, Integer> drafts = new HashMap<>();

  private final Set<String> dropped = new HashSet<>();
  private final Map<Integer, String> handed = new HashMap<>();
  private final Set<Integer> imported = new HashSet<>();
  private final Set<Integer> agreed = new HashSet<>();
  private int begun;

  private Optional<StorePlace> kept = Optional.empty();

  /** Where the records of one test are. */
  StorePlace newPlace(Path home) {
    return StorePlace.of(home);
  }

  private StorePlace place() {
    if (kept.isEmpty()) {
      kept = Optional.of(newPlace(folder));
    }
    return kept.get();
  }

  @Test
  void nothingThatWasAnsweredIsLostAndNothingIsHalfThere() throws Exception {
    Random random = new Random(20261130);
    for (int kill = 0; kill < KILLS; kill++) {
      workUntilKilled(1 + random.nextInt(MOST_LINES_BEFORE_A_KILL), random.nextInt(MOST_SPINS));
      look();
    }
    assertTrue(handed.size() + imported.size() > 0, "the kills left some work done");
  }

  private void workUntilKilled(int lines, int spins) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(
                ProcessHandle.current().info().command().orElse("java"),
                "-Xmx256m",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                KilledDesk.class.getName(),
                folder.toString(),
                Integer.toString(begun),
                place().database().map(DatabaseAddress::url).orElse(""))
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    try (BufferedReader said = process.inputReader(StandardCharsets.UTF_8)) {
      for (int count = 0; count < lines; count++) {
        String line = said.readLine();
        assertNotNull(line, "the process ended by itself");
        take(line);
      }
      for (int spin = 0; spin < spins; spin++) {
        Thread.onSpinWait();
      }
      assertTrue(process.toHandle().destroyForcibly());
      // What it still managed to say counts as answered too.
      for (String line = said.readLine(); line != null; line = said.readLine()) {
        take(line);
      }
    } finally {
      process.toHandle().destroyForcibly();
      process.waitFor();
    }
    // What was under way may stand or not, up to the next number; none is used again.
    begun += 2;
  }

  private void take(String line) {
    String[] words = line.split(" ", -1);
    int number = words.length > 1 && words[1].matches("\\d+") ? Integer.parseInt(words[1]) : -1;
    switch (words[0]) {
      case "draft" -> drafts.put(words[2], number);
      case "handed" -> handed.put(number, words[2] + " " + words[3]);
      case "dropped" -> dropped.add(words[2]);
      case "import" -> imported.add(number);
      case "agreed" -> agreed.add(number);
      default -> {
        return;
      }
    }
    begun = Math.max(begun, number);
  }

  private void look() {
    try (Home home = Home.open(place(), Clock.systemUTC())) {
      assertTrue(home.soundness().orElseThrow().isSound());
      lookAtDrafts(home);
      handed.forEach((number, where) -> lookAtHandedIn(home, number, where));
      lookAtImports(home);
      KilledReconciliation.lookAtAll(home);
      agreed.forEach(number -> KilledReconciliation.lookAt(home, number));
      List<Object> followed = answers(home);
      home.reindex();
      assertEquals(answers(home), followed, "store and index agree");
    }
  }

  /** A draft that was begun is there whole until it was ended. */
  private void lookAtDrafts(Home home) {
    Set<String> there = new HashSet<>();
    for (KeptDraft draft : home.drafts().all()) {
      there.add(draft.id());
    }
    dropped.forEach(id -> assertTrue(!there.contains(id), "an ended draft came back"));
    drafts.forEach(
        (id, number) -> {
          // Between the answer of handing in and that of ending it, the draft may be gone.
          boolean mayBeGone = dropped.contains(id) || handed.containsKey(number);
          assertTrue(there.contains(id) || mayBeGone, "a draft that was kept is lost");
        });
  }

  private static void lookAtHandedIn(Home home, int number, String where) {
    String[] words = where.split(" ", -1);
    StudyVersion version =
        home.base().latest().version(words[0], Integer.parseInt(words[1])).orElseThrow();
    assertEquals(
        KilledDesk.title(number), version.study().orElseThrow().citation().title(), "as handed in");
  }

  /** Each import whole or not at all; each handed-in draft with the record of its doubts. */
  private void lookAtImports(Home home) {
    Map<Integer, Integer> studies = new HashMap<>();
    home.base()
        .latest()
        .forEach(
            kept -> {
              if (kept.study().id().startsWith("file")) {
                String number = kept.study().id().substring("file".length()).split("-", -1)[0];
                studies.merge(Integer.parseInt(number), 1, Integer::sum);
              }
            });
    studies.forEach(
        (number, count) -> assertEquals(KilledDesk.STUDIES_OF_A_FILE, count, "half an import"));
    imported.forEach(number -> assertTrue(studies.containsKey(number), "an import is lost"));
    Map<String, Integer> records = new HashMap<>();
    home.base()
        .latest()
        .imports()
        .forEach(one -> records.merge(one.stamp().why(), 1, Integer::sum));
    studies.keySet().forEach(number -> assertEquals(1, records.get("file " + number)));
    handed.keySet().forEach(number -> assertEquals(1, records.get("draft " + number)));
  }

  private static List<Object> answers(Home home) {
    try (Hold hold = home.hold()) {
      StudySearch search = hold.evidence().search();
      List<Object> answers = new ArrayList<>();
      answers.add(
          search.search(SearchRequest.EVERYTHING, StudySearch.Order.TITLE, 0, Integer.MAX_VALUE));
      answers.add(search.everyArm(SearchRequest.EVERYTHING));
      return answers;
    }
  }
}
