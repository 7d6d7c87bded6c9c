package gapwise.load;

import gapwise.search.BareLucene;
import gapwise.server.address.Paging;
import gapwise.server.home.Home;
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
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Builds bases of invented studies, starts the server over each, and prints how long pages take
 * beside the same searches on the bare index, asked over the network in the same way and called
 * directly, all in one process. Arguments: a folder for the bases, which are kept for the next run,
 * then numbers of arms.
 */
public final class LoadBenchmark {
  private static final int[] USERS = {1, 32};
  private static final int DIFFERENT = 4000;
  private static final Duration WARM_UP = Duration.ofSeconds(4);
  private static final Duration FIRST_WARM_UP = Duration.ofSeconds(15);
  private static final Duration MEASURED = Duration.ofSeconds(1);

  /** All are measured by turns, so that what else the machine does meets them alike. */
  private static final int TURNS = 4;

  private final HttpClient client =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
  private final PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);

  private LoadBenchmark() {}

  /** A page with the same search on the bare index. */
  private record Measured(String name, List<Asked> asked, BareServer.Search bare) {}

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
        "| page | arms | users | server p50, ms | p99 | in a second | bare, asked the same way, p50"
            + " | p99 | in a second | bare, called | p99 | in a second | ratio, asked | ratio,"
            + " called |");
    out.println("|" + " --- |".repeat(14));
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
      warmUp(measured(bare), server.port());
      for (Measured measured : measured(bare)) {
        for (int users : USERS) {
          tell(measured, arms, users, server.port());
        }
      }
    }
  }

  /** A server that has just started answers slowly until its code is compiled. */
  private void warmUp(List<Measured> all, int port)
      throws InterruptedException, ExecutionException {
    for (Measured measured : all) {
      List<Asked> asked = measured.asked();
      new Latencies.Sum()
          .add(asked.size(), 2, FIRST_WARM_UP, question -> fetch(port, asked.get(question).path()));
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

  private static List<Measured> measured(BareLucene bare) {
    BareServer.Search page = asked -> bare.page(asked.request(), Paging.LINES);
    BareServer.Search map = asked -> bare.map(asked.request());
    return List.of(
        new Measured("studies", Asked.searches(DIFFERENT, false), page),
        new Measured("studies with an outcome", Asked.searches(DIFFERENT, true), page),
        new Measured("typing", Asked.typed(DIFFERENT), asked -> bare.typed(asked.request())),
        new Measured("map, narrowed", Asked.maps(DIFFERENT), map),
        new Measured("map, the same again", Asked.sameMap(), map));
  }

  private void fetch(int port, String path) throws IOException, InterruptedException {
    HttpResponse<byte[]> answer =
        client.send(
            HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path)).build(),
            HttpResponse.BodyHandlers.ofByteArray());
    if (answer.statusCode() != 200) {
      throw new IllegalStateException(path + " answered " + answer.statusCode());
    }
  }

  /** The ratios are those of the answers in a second, so of the mean time that each takes. */
  private void tell(Measured measured, int arms, int users, int port)
      throws InterruptedException, ExecutionException {
    List<Asked> asked = measured.asked();
    try (BareServer bareServer = BareServer.start(asked, measured.bare())) {
      List<Latencies.Work> works =
          List.of(
              question -> fetch(port, asked.get(question).path()),
              question -> fetch(bareServer.port(), "/" + question),
              question -> measured.bare().of(asked.get(question)));
      List<Latencies> took = byTurns(works, asked.size(), users);
      out.printf("| %s | %,d | %d | ", measured.name(), arms, users);
      out.println(
          took.stream().map(LoadBenchmark::cells).collect(Collectors.joining(" | "))
              + " | "
              + ratio(took, 1)
              + " | "
              + ratio(took, 2)
              + " |");
    }
  }

  private static List<Latencies> byTurns(List<Latencies.Work> works, int questions, int users)
      throws InterruptedException, ExecutionException {
    List<Latencies.Sum> sums = new ArrayList<>();
    for (Latencies.Work work : works) {
      Latencies.Sum warm = new Latencies.Sum();
      warm.add(questions, users, WARM_UP, work);
      sums.add(warm.onwards());
    }
    for (int turn = 0; turn < TURNS; turn++) {
      for (int i = 0; i < works.size(); i++) {
        sums.get(i).add(questions, users, MEASURED, works.get(i));
      }
    }
    return sums.stream().map(Latencies.Sum::latencies).toList();
  }

  private static String cells(Latencies took) {
    return String.format(
        Locale.ROOT, "%.2f | %.1f | %.0f", took.p50(), took.p99(), took.perSecond());
  }

  private static String ratio(List<Latencies> took, int against) {
    double ratio = took.get(against).perSecond() / took.get(0).perSecond();
    return String.format(Locale.ROOT, "%.1f", ratio);
  }
}
