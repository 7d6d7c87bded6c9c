package gapwise.drill;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;

/**
 * Sends made-up requests to the built program over the demonstration base. No answer may be of the
 * program's own fault (500 and above, but 503 for "busy" and 505), hold a trace of the program or
 * what was sent unescaped, or take longer than the budget of a request. Prints a table for
 * docs/reliability.md.
 */
public final class RequestDrill {
  private static final int PORT = 7391;
  private static final int CLIENTS = 2;
  private static final int WARM_UP = 500;
  private static final double SLOW_SECONDS = 5;
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private final HttpClient client =
      HttpClient.newBuilder().followRedirects(HttpClient.Redirect.NEVER).build();
  private final Map<Integer, Integer> statuses = new TreeMap<>();
  private final List<String> faults = new ArrayList<>();
  private double slowest;

  private RequestDrill() {}

  /**
   * Runs the drill.
   *
   * @param arguments the jar, an empty folder, the demonstration workbook, the folder of published
   *     examples, how many requests for each seed, then the seeds
   */
  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createDirectories(Path.of(arguments[1]));
    System.out.println(
        "| seed | requests | answers by status | faults | slowest, s | live heap at the start, after"
            + " one, two and three thirds, MB | memory of the process at the end, MB |");
    System.out.println("| --- | --- | --- | --- | --- | --- | --- |");
    boolean sound = true;
    for (int i = 5; i < arguments.length; i++) {
      RequestDrill drill = new RequestDrill();
      drill.run(arguments, folder, Long.parseLong(arguments[i]));
      sound &= drill.faults.isEmpty();
    }
    System.exit(sound ? 0 : 1);
  }

  private void run(String[] arguments, Path folder, long seed) throws Exception {
    Path home = Files.createTempDirectory(folder, "home");
    int requests = Integer.parseInt(arguments[4]);
    List<String> words =
        List.of(
            "demo",
            "--home",
            home.toString(),
            "--data",
            arguments[2],
            "--port",
            Integer.toString(PORT));
    try (Program program = Program.start(Path.of(arguments[0]), folder, words)) {
      if (!program.answers(client, PORT)) {
        throw new IllegalStateException("the program does not start: " + program.said());
      }
      MadeUp madeUp =
          new MadeUp(
              seed,
              json("/api/v1/openapi.json"),
              json("/api/v1/vocabularies"),
              Path.of(arguments[3]));
      send(madeUp, -WARM_UP, 0);
      statuses.clear();
      slowest = 0;
      List<Long> live = new ArrayList<>(List.of(program.liveHeapMegabytes()));
      for (int third = 1; third <= 3; third++) {
        send(madeUp, requests * (third - 1) / 3, requests * third / 3);
        live.add(program.liveHeapMegabytes());
      }
      System.out.printf(
          Locale.ROOT,
          "| %d | %,d | %s | %d | %.1f | %s | %d |%n",
          seed,
          requests,
          statuses,
          faults.size(),
          slowest,
          live.stream().map(String::valueOf).collect(Collectors.joining(", ")),
          program.memoryMegabytes());
      faults.stream().limit(50).forEach(System.out::println);
    }
  }

  private JsonNode json(String path) throws IOException, InterruptedException {
    return JSON.readTree(
        client
            .send(
                HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + PORT + path)).build(),
                HttpResponse.BodyHandlers.ofString())
            .body());
  }

  private void send(MadeUp madeUp, int from, int to) throws InterruptedException {
    AtomicInteger next = new AtomicInteger(from);
    ExecutorService clients = Executors.newFixedThreadPool(CLIENTS);
    for (int i = 0; i < CLIENTS; i++) {
      clients.execute(
          () -> {
            for (int n = next.getAndIncrement(); n < to; n = next.getAndIncrement()) {
              send(n, madeUp.request(n));
            }
          });
    }
    clients.shutdown();
    clients.awaitTermination(1, TimeUnit.DAYS);
  }

  private void send(int number, MadeUp.Request made) {
    long start = System.nanoTime();
    try {
      HttpRequest request =
          HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + PORT + made.address()))
              .timeout(Duration.ofSeconds(120))
              .header("Content-Type", "application/json")
              .method(made.method(), HttpRequest.BodyPublishers.ofString(made.body()))
              .build();
      HttpResponse<String> answer = sent(request);
      judge(number, made, answer, (System.nanoTime() - start) / 1e9);
    } catch (IOException | InterruptedException | IllegalArgumentException broken) {
      fault(number, made, "no answer: " + broken);
    }
  }

  /** A line that was kept may have been closed by the server meanwhile, so it is tried twice. */
  private HttpResponse<String> sent(HttpRequest request) throws IOException, InterruptedException {
    try {
      return client.send(request, HttpResponse.BodyHandlers.ofString());
    } catch (IOException closedMeanwhile) {
      return client.send(request, HttpResponse.BodyHandlers.ofString());
    }
  }

  private synchronized void judge(
      int number, MadeUp.Request made, HttpResponse<String> answer, double seconds) {
    int status = answer.statusCode();
    statuses.merge(status, 1, Integer::sum);
    slowest = Math.max(slowest, seconds);
    if (status >= 500 && status != 503 && status != 505) {
      fault(number, made, "status " + status);
    }
    if (seconds > SLOW_SECONDS) {
      fault(number, made, String.format(Locale.ROOT, "took %.1f s", seconds));
    }
    String type = answer.headers().firstValue("Content-Type").orElse("");
    if (type.contains("html") && answer.body().contains("<xq9")) {
      fault(number, made, "sent text stands unescaped");
    }
    if (answer.body().contains("\tat gapwise.") || answer.body().contains("java.lang.")) {
      fault(number, made, "a trace of the program");
    }
    if (answer.headers().firstValue("Content-Security-Policy").isEmpty()) {
      fault(number, made, "headers lacking");
    }
  }

  private synchronized void fault(int number, MadeUp.Request made, String what) {
    String address = made.address();
    faults.add(
        "#"
            + number
            + " "
            + what
            + ": "
            + made.method()
            + " "
            + address.substring(0, Math.min(160, address.length())));
  }
}
