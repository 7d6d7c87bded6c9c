package gapwise.load;

import gapwise.server.Gapwise;
import gapwise.server.home.Home;
import gapwise.server.testing.RealServer;
import gapwise.store.StorePlace;
import gapwise.store.database.DatabaseAddress;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.PrintStream;
import java.net.http.HttpClient;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Two server processes on one PostgreSQL database, each with a home of its own; people write to and
 * read from both over HTTP. Counts lost updates and the oldest thing that anybody read. Arguments:
 * a folder, seconds, writers, readers. Ends with 0 when no update is lost and nothing older than
 * two seconds was read.
 */
public final class SharedDatabase {
  private static final Duration START = Duration.ofSeconds(120);
  private static final int SERVERS = 2;
  private static final Pattern TOLD = Pattern.compile("Gapwise is at http://localhost:(\\d+)/");
  private static final int ARMS_BESIDE = 100;

  /** A server that has just started answers slowly until its code is compiled; not counted. */
  private static final Duration WARM_UP = Duration.ofSeconds(30);

  private final Path folder;
  private final DatabaseAddress address;
  private final List<Integer> ports = new ArrayList<>();
  private final Acknowledged acknowledged = new Acknowledged();
  private final HttpClient client =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

  private SharedDatabase(Path folder, DatabaseAddress address) {
    this.folder = folder;
    this.address = address;
  }

  /** Runs it. */
  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createTempDirectory(Files.createDirectories(Path.of(arguments[0])), "run");
    try (EmbeddedPostgres server = RealServer.asATeamRunsIt().start()) {
      boolean sound =
          new SharedDatabase(folder, RealServer.address(server, "postgres"))
              .run(
                  Duration.ofSeconds(Long.parseLong(arguments[1])),
                  Integer.parseInt(arguments[2]),
                  Integer.parseInt(arguments[3]));
      server.close();
      System.exit(sound ? 0 : 1);
    }
  }

  private boolean run(Duration duration, int writers, int readers) throws Exception {
    try (Home home = home("first")) {
      home.base().saveAll(InventedStudies.ofArms(ARMS_BESIDE), "load", "invented", List.of());
    }
    List<Process> processes = new ArrayList<>();
    try {
      for (int server = 0; server < SERVERS; server++) {
        processes.add(start(server));
      }
      for (int server = 0; server < SERVERS; server++) {
        ports.add(portOf(server, processes.get(server)));
      }
      atOnce(WARM_UP, writers, readers);
      Tally tally = atOnce(duration, writers, readers);
      return tell(duration, writers, readers, tally);
    } finally {
      processes.forEach(Process::destroy);
      for (Process process : processes) {
        process.waitFor();
      }
    }
  }

  private Home home(String name) {
    return Home.open(
        new StorePlace(folder.resolve(name), Optional.of(address)), Clock.systemUTC());
  }

  private Process start(int server) throws IOException {
    return new ProcessBuilder(
            "java",
            "-Xmx768m",
            "-cp",
            System.getProperty("java.class.path"),
            Gapwise.class.getName(),
            "serve",
            "--port",
            "0",
            "--home",
            folder.resolve("home-" + server).toString(),
            "--database",
            address.url())
        .redirectErrorStream(true)
        .redirectOutput(said(server).toFile())
        .start();
  }

  private Path said(int server) {
    return folder.resolve("said-" + server + ".txt");
  }

  /** The port that a server took, told once it answers there. */
  private int portOf(int server, Process process) throws IOException, InterruptedException {
    long end = System.nanoTime() + START.toNanos();
    while (System.nanoTime() < end && process.isAlive()) {
      Matcher told = TOLD.matcher(Files.readString(said(server)));
      if (told.find()) {
        return Integer.parseInt(told.group(1));
      }
      Thread.sleep(50);
    }
    throw new IllegalStateException("no server: " + Files.readString(said(server)));
  }

  /** Everybody at once; half of them at each server. */
  private Tally atOnce(Duration duration, int writers, int readers) throws Exception {
    ExecutorService people = Executors.newFixedThreadPool(writers + readers);
    try {
      List<Callable<Tally>> work = new ArrayList<>();
      for (int number = 0; number < writers; number++) {
        int port = ports.get(number % SERVERS);
        work.add(new SharedWriter(client, port, number, acknowledged, duration));
      }
      for (int number = 0; number < readers; number++) {
        int port = ports.get(number % SERVERS);
        work.add(new SharedReader(client, port, number, acknowledged, duration));
      }
      Tally all = new Tally();
      for (Future<Tally> done : people.invokeAll(work)) {
        all.add(done.get());
      }
      return all;
    } finally {
      people.shutdown();
    }
  }

  private boolean tell(Duration duration, int writers, int readers, Tally tally) {
    List<String> lost;
    try (Home home = home("last")) {
      lost = acknowledged.lost(home.base().latest());
    }
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    out.println(
        "| seconds | writers, readers | writes acknowledged | conflicts told | lost updates | reads"
            + " | of them older than 2 s | oldest read, s | read p50, p99, ms | busy | faults |");
    out.println("|" + " --- |".repeat(11));
    out.printf(
        Locale.ROOT,
        "| %d | %d, %d | %d | %d | %d | %d | %d | %.2f | %.0f, %.0f | %d | %d |%n",
        duration.toSeconds(),
        writers,
        readers,
        acknowledged.count(),
        tally.conflicts(),
        lost.size(),
        tally.reads(),
        tally.stale(),
        tally.oldestSeconds(),
        tally.milliseconds(0.50),
        tally.milliseconds(0.99),
        tally.busy(),
        tally.faults().size());
    lost.forEach(out::println);
    tally.faults().stream().distinct().limit(20).forEach(out::println);
    return lost.isEmpty() && tally.stale() == 0 && tally.faults().isEmpty();
  }
}
