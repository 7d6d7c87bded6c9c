package gapwise.load;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;

/** A person who reads: the studies that are being changed, and now and then a list. */
final class SharedReader implements Callable<Tally> {
  private static final int OK = 200;
  private static final int NONE = 404;
  private static final int BUSY = 503;

  /** A person looks at what came before asking on. */
  private static final long LOOKS_MILLISECONDS = 200;

  private final HttpClient client;
  private final int port;
  private final Acknowledged acknowledged;
  private final Duration duration;
  private final SplittableRandom random;
  private final Tally tally = new Tally();

  SharedReader(
      HttpClient client, int port, int number, Acknowledged acknowledged, Duration duration) {
    this.client = client;
    this.port = port;
    this.acknowledged = acknowledged;
    this.duration = duration;
    this.random = new SplittableRandom(1_000L + number);
  }

  @Override
  public Tally call() throws IOException, InterruptedException {
    long end = System.nanoTime() + duration.toNanos();
    while (System.nanoTime() < end) {
      if (random.nextInt(5) == 0) {
        list();
      } else {
        study(Acknowledged.study(random.nextInt(Acknowledged.STUDIES)));
      }
      Thread.sleep(LOOKS_MILLISECONDS);
    }
    return tally;
  }

  private HttpResponse<Void> ask(String path) throws IOException, InterruptedException {
    return client.send(
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path)).build(),
        HttpResponse.BodyHandlers.discarding());
  }

  private void list() throws IOException, InterruptedException {
    long asked = System.nanoTime();
    HttpResponse<Void> answer = ask("/studies?from=" + random.nextInt(8));
    take(answer.statusCode(), asked, 0);
  }

  private void study(String id) throws IOException, InterruptedException {
    long asked = System.nanoTime();
    HttpResponse<Void> answer = ask("/api/v1/studies/" + id);
    int version =
        answer.headers().firstValue("ETag").map(tag -> tag.replaceAll("\\D", "")).stream()
            .mapToInt(Integer::parseInt)
            .findFirst()
            .orElse(0);
    take(answer.statusCode(), asked, acknowledged.age(id, version, asked));
  }

  private void take(int status, long asked, long age) {
    if (status == OK || status == NONE) {
      tally.read(System.nanoTime() - asked, age);
    } else if (status == BUSY) {
      tally.busyAnswer();
    } else {
      tally.fault("a read was answered " + status);
    }
  }
}
