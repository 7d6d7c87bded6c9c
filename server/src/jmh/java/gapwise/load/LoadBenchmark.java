package gapwise.load;

import gapwise.search.BareLucene;
import gapwise.server.home.Home;
import gapwise.server.page.Paging;
import gapwise.server.web.WebServer;
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
import java.util.concurrent.ExecutionException;
import java.util.stream.Stream;

/**
 * Builds bases of invented studies, starts the server over each, and prints how long pages take
 * beside the same searches on the bare index, in one process. Arguments: a folder for the bases,
 * which are kept for the next run, then numbers of arms.
 */
public final class LoadBenchmark {
  private static final int[] USERS = {1, 32};
  private static final int DIFFERENT = 4000;
  private static final Duration WARM_UP = Duration.ofSeconds(2);
  private static final Duration MEASURED = Duration.ofSeconds(1);

  /** Both are measured by turns, so that what else the machine does meets both alike. */
  private static final int TURNS = 4;

  private final PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);

  private LoadBenchmark() {}

  /** A page with the same work on the bare index. */
  private record Measured(
      String name, List<Asked> asked, Latencies.Work server, Latencies.Work bare) {}

  /** Runs it. */
  public static void main(String[] arguments)
      throws IOException, InterruptedException, ExecutionException {
    LoadBenchmark benchmark = new LoadBenchmark();
    benchmark.head();
    for (String arms : Stream.of(arguments).skip(1).toList()) {
      benchmark.run(Path.of(arguments[0], arms), Integer.parseInt(arms));
    }
  }

  private void head() {
    out.println(
        "| page | arms | users | server p50, ms | p99, ms | in a second | bare p50, ms | p99, ms |"
            + " in a second | ratio |");
    out.println("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
  }

  private void run(Path folder, int arms)
      throws IOException, InterruptedException, ExecutionException {
    build(folder, arms);
    try (Home home = Home.open(folder, Clock.systemUTC());
        WebServer server = WebServer.start(home, "127.0.0.1", 0, "load");
        BareLucene bare = BareLucene.open(folder.resolve("index"))) {
      if (bare.arms() != arms) {
        throw new IllegalStateException(
            folder + " holds " + bare.arms() + " arms, not " + arms + "; delete it to build anew");
      }
      for (Measured measured : measured(server.port(), bare)) {
        for (int users : USERS) {
          tell(measured, arms, users);
        }
      }
    }
  }

  /** Closing writes the whole index to disk, where the bare searches read it. */
  private static void build(Path folder, int arms) throws IOException {
    if (Files.isDirectory(folder)) {
      return;
    }
    Files.createDirectories(folder);
    try (Home home = Home.open(folder, Clock.systemUTC())) {
      home.base().saveAll(InventedStudies.ofArms(arms), "benchmark", "invented", List.of());
    }
  }

  private static List<Measured> measured(int port, BareLucene bare) {
    HttpClient client = HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
    Latencies.Work page = asked -> fetch(client, port, asked.path());
    List<Measured> measured = new ArrayList<>();
    measured.add(
        new Measured(
            "studies",
            Asked.searches(DIFFERENT, false),
            page,
            asked -> bare.page(asked.request(), Paging.LINES)));
    measured.add(
        new Measured(
            "studies with an outcome",
            Asked.searches(DIFFERENT, true),
            page,
            asked -> bare.page(asked.request(), Paging.LINES)));
    measured.add(
        new Measured("typing", Asked.typed(DIFFERENT), page, asked -> bare.count(asked.request())));
    Latencies.Work map = asked -> bare.map(asked.request());
    measured.add(new Measured("map, narrowed", Asked.maps(DIFFERENT), page, map));
    measured.add(new Measured("map, the same again", Asked.sameMap(), page, map));
    return measured;
  }

  private static void fetch(HttpClient client, int port, String path)
      throws IOException, InterruptedException {
    HttpResponse<byte[]> answer =
        client.send(
            HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path)).build(),
            HttpResponse.BodyHandlers.ofByteArray());
    if (answer.statusCode() != 200) {
      throw new IllegalStateException(path + " answered " + answer.statusCode());
    }
  }

  /** The ratio is that of the answers in a second, so of the mean time that each takes. */
  private void tell(Measured measured, int arms, int users)
      throws InterruptedException, ExecutionException {
    Latencies.Sum warmBare = new Latencies.Sum();
    warmBare.add(measured.asked(), users, WARM_UP, measured.bare());
    Latencies.Sum warmServer = new Latencies.Sum();
    warmServer.add(measured.asked(), users, WARM_UP, measured.server());
    Latencies.Sum bareSum = warmBare.onwards();
    Latencies.Sum serverSum = warmServer.onwards();
    for (int turn = 0; turn < TURNS; turn++) {
      bareSum.add(measured.asked(), users, MEASURED, measured.bare());
      serverSum.add(measured.asked(), users, MEASURED, measured.server());
    }
    Latencies bare = bareSum.latencies();
    Latencies server = serverSum.latencies();
    out.printf(
        Locale.ROOT,
        "| %s | %,d | %d | %.1f | %.1f | %.0f | %.2f | %.2f | %.0f | %.1f |%n",
        measured.name(),
        arms,
        users,
        server.p50(),
        server.p99(),
        server.perSecond(),
        bare.p50(),
        bare.p99(),
        bare.perSecond(),
        bare.perSecond() / server.perSecond());
  }
}
