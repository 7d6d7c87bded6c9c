package gapwise.load;

import gapwise.server.Gapwise;
import gapwise.server.home.Home;
import gapwise.server.testing.RealServer;
import gapwise.store.StorePlace;
import gapwise.store.database.DatabaseAddress;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
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

/**
 * Two server processes on one PostgreSQL database, each with a home of its own; people write to and
 * read from both over HTTP. Counts lost updates and the oldest thing that anybody read. Arguments:
 * a folder, seconds, writers, readers. Ends with 0 when no update is lost and nothing older than
 * two seconds was read.
 */
public final class SharedDatabase {
  private static final Duration START = Duration.ofSeconds(120);
  private static final int[] PORTS = {7391, 7392};
  private static final int ARMS_BESIDE = 100;

  /** A server that has just started answers slowly until its code is compiled; not counted. */
  private static final Duration WARM_UP = Duration.ofSeconds(30);

  private final Path folder;
  private final DatabaseAddress address;
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
      for (int port : PORTS) {
        processes.add(start(port));
      }
      for (int port : PORTS) {
        awaitAnswer(port);
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

  private Process start(int port) throws IOException {
    return new ProcessBuilder(
            "java",
            "-Xmx768m",
            "-cp",
            System.getProperty("java.class.path"),
            Gapwise.class.getName(),
            "serve",
            "--port",
            Integer.toString(port),
            "--home",
            folder.resolve("home-" + port).toString(),
            "--database",
            address.url())
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve("said-" + port + ".txt").toFile())
        .start();
  }

  private void awaitAnswer(int port) throws InterruptedException {
    long end = System.nanoTime() + START.toNanos();
    while (System.nanoTime() < end) {
      try {
        HttpRequest request =
            HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/api/v1/studies"))
                .build();
        if (client.send(request, HttpResponse.BodyHandlers.discarding()).statusCode() == 200) {
          return;
        }
      } catch (IOException notYet) {
        Thread.sleep(50);
      }
    }
    throw new IllegalStateException("no server answers at " + port);
  }

  /** Everybody at once; half of them at each server. */
  private Tally atOnce(Duration duration, int writers, int readers) throws Exception {
    ExecutorService people = Executors.newFixedThreadPool(writers + readers);
    try {
      List<Callable<Tally>> work = new ArrayList<>();
      for (int number = 0; number < writers; number++) {
        work.add(new SharedWriter(client, PORTS[number % 2], number, acknowledged, duration));
      }
      for (int number = 0; number < readers; number++) {
        work.add(new SharedReader(client, PORTS[number % 2], number, acknowledged, duration));
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
