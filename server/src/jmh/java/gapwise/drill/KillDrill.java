package gapwise.drill;

import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.server.home.Hold;
import gapwise.server.home.Home;
import gapwise.server.testing.RealServer;
import gapwise.store.StorePlace;
import gapwise.store.database.DatabaseAddress;
import java.io.IOException;
import java.net.http.HttpClient;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Kills the program while it imports, by command and by HTTP in turns, with its records in the file
 * of the home or on a PostgreSQL server that goes on running, and opens the home again
 * after each: nothing that was acknowledged may be lost, nothing may be half, and the index must
 * answer as one that is built anew does. Prints a table for docs/reliability.md.
 */
public final class KillDrill {
  private static final int PORT = 7390;
  private static final double LONGEST_SECONDS = 6;

  private final Path jar;
  private final Path folder;
  private final SplittableRandom random;
  private final HttpClient client = HttpClient.newHttpClient();
  private final List<Double> openings = new ArrayList<>();
  private final List<Double> starts = new ArrayList<>();
  private final List<String> faults = new ArrayList<>();
  private Optional<GrowingLog> log = Optional.empty();
  private int killed;
  private int whileWriting;

  private KillDrill(Path jar, Path folder, long seed) {
    this.jar = jar;
    this.folder = folder;
    this.random = new SplittableRandom(seed);
  }

  /**
   * Runs the drill.
   *
   * @param arguments the jar, an empty folder, how many kills of each kind, a seed, and postgresql
   *     where a server, which is started for it, is to keep the records
   */
  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createDirectories(Path.of(arguments[1]));
    int kills = Integer.parseInt(arguments[2]);
    boolean onServer = arguments.length > 4 && arguments[4].equals("postgresql");
    System.out.println(
        "| kills | of them while writing | acknowledged imports lost | half imports | index unlike"
            + " one built anew | opened again, median and worst, s | server answers again, median"
            + " and worst, s |");
    System.out.println("| --- | --- | --- | --- | --- | --- | --- |");
    boolean sound = true;
    for (boolean http : List.of(false, true)) {
      KillDrill drill = new KillDrill(Path.of(arguments[0]), folder, Long.parseLong(arguments[3]));
      drill.run(kills, http, onServer);
      sound &= drill.faults.isEmpty();
    }
    System.exit(sound ? 0 : 1);
  }

  private void run(int kills, boolean http, boolean onServer) throws Exception {
    Path newHome = Files.createTempDirectory(folder, "home");
    StorePlace home = onServer ? RealServer.newPlace(newHome) : StorePlace.of(newHome);
    log = Optional.of(new GrowingLog(home));
    Batches batches = http ? new Batches(random, 30, 250) : new Batches(random, 60, 700);
    while (killed < kills) {
      if (http) {
        overHttp(home, batches);
      } else {
        byCommand(home, batches);
      }
      look(home, batches);
    }
    System.out.printf(
        Locale.ROOT,
        "| %d by %s, %s | %d | %d | %d | %d | %s | %s |%n",
        killed,
        http ? "HTTP" : "command",
        onServer ? "PostgreSQL" : "SQLite",
        whileWriting,
        count("lost"),
        count("half"),
        count("index"),
        spread(openings),
        spread(starts));
    faults.forEach(System.out::println);
  }

  private long count(String kind) {
    return faults.stream().filter(fault -> fault.startsWith(kind)).count();
  }

  private static String spread(List<Double> seconds) {
    if (seconds.isEmpty()) {
      return "-";
    }
    List<Double> sorted = new ArrayList<>(seconds);
    Collections.sort(sorted);
    return String.format(
        Locale.ROOT, "%.1f, %.1f", sorted.get(sorted.size() / 2), sorted.get(sorted.size() - 1));
  }

  private void byCommand(StorePlace home, Batches batches) throws Exception {
    Batches.Handed handed = batches.next();
    List<String> words =
        new ArrayList<>(List.of("import", "--who", "drill", "--replace"));
    words.addAll(place(home));
    Batches.write(handed, folder).forEach(path -> words.add(path.toString()));
    try (Program program = Program.start(jar, folder, words)) {
      waitAWhile(program);
      if (program.isRunning()) {
        program.kill();
        killed++;
      } else if (program.exitCode() == 0) {
        batches.acknowledged(handed);
      } else {
        faults.add("import refused: " + program.said());
      }
      if (program.said().contains("studies added or changed")) {
        batches.acknowledged(handed);
      }
    }
  }

  private void overHttp(StorePlace home, Batches batches) throws Exception {
    List<String> words = new ArrayList<>(List.of("serve", "--port", Integer.toString(PORT)));
    words.addAll(place(home));
    long start = System.nanoTime();
    try (Program program = Program.start(jar, folder, words)) {
      if (!program.answers(client, PORT)) {
        faults.add("does not start: " + program.said());
        killed++;
        return;
      }
      starts.add(secondsSince(start));
      ExecutorService feeder = Executors.newSingleThreadExecutor();
      Future<?> feeding = feeder.submit(() -> feed(batches, program));
      waitAWhile(program);
      program.kill();
      killed++;
      feeding.get();
      feeder.shutdown();
    }
  }

  private void feed(Batches batches, Program program) {
    while (program.isRunning()) {
      Batches.Handed handed = batches.next();
      try {
        if (Upload.stored(client, PORT, Batches.files(handed))) {
          batches.acknowledged(handed);
        }
      } catch (IOException killedMeanwhile) {
        return;
      } catch (InterruptedException stopped) {
        Thread.currentThread().interrupt();
        return;
      }
    }
  }

  /** To a random moment: of the clock, or in three of four cases after the log has grown. */
  private void waitAWhile(Program program) throws Exception {
    boolean byLog = random.nextInt(4) > 0;
    double seconds = byLog ? LONGEST_SECONDS : random.nextDouble(0.2, LONGEST_SECONDS);
    long more = new long[] {1, 4_096, 50_000, 200_000, 600_000}[random.nextInt(5)];
    long grown = log.orElseThrow().bytes() + more;
    long end = System.nanoTime() + (long) (seconds * 1e9);
    while (System.nanoTime() < end && program.isRunning()) {
      if (byLog && log.orElseThrow().bytes() >= grown) {
        whileWriting++;
        Thread.sleep(new long[] {0, 1, 5, 20, 100}[random.nextInt(5)]);
        return;
      }
      Thread.sleep(1);
    }
  }

  private static List<String> place(StorePlace place) {
    return List.of(
        "--home",
        place.home().toString(),
        "--database",
        place.database().map(DatabaseAddress::url).orElse("sqlite"));
  }

  private void look(StorePlace home, Batches batches) {
    long start = System.nanoTime();
    try (Home open = Home.open(home, Clock.systemUTC())) {
      openings.add(secondsSince(start));
      Map<String, String> titles = new HashMap<>();
      List<Object> followed = answers(open, titles);
      faults.addAll(batches.faults(titles));
      open.reindex();
      if (!followed.equals(answers(open, new HashMap<>()))) {
        faults.add("index: differs from one built anew after kill " + killed);
      }
      if (((SearchAnswer) followed.get(0)).studies() != titles.size()) {
        faults.add("index: shows other studies than are kept after kill " + killed);
      }
    } catch (RuntimeException failure) {
      faults.add("does not open: " + failure);
    }
  }

  /** What the index answers: everything with its counts, every arm, and each revision's word. */
  private static List<Object> answers(Home home, Map<String, String> titles) {
    try (Hold hold = home.hold()) {
      StudySearch search = hold.evidence().search();
      hold.evidence()
          .studies()
          .forEach(kept -> titles.put(kept.study().id(), kept.study().citation().title()));
      List<Object> answers = new ArrayList<>();
      answers.add(
          search.search(SearchRequest.EVERYTHING, StudySearch.Order.TITLE, 0, Integer.MAX_VALUE));
      answers.add(search.everyArm(SearchRequest.EVERYTHING));
      for (int revision = 1; revision <= 3; revision++) {
        SearchRequest word = SearchRequest.EVERYTHING.withText("revision" + revision);
        answers.add(search.everyArm(word));
      }
      return answers;
    }
  }

  private static double secondsSince(long start) {
    return (System.nanoTime() - start) / 1e9;
  }
}
