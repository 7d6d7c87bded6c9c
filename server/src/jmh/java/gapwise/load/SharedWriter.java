package gapwise.load;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.drill.Upload;
import java.io.IOException;
import java.net.http.HttpClient;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A person who changes studies that others change too: hands in a new title, is told which version
 * it would replace, and agrees to replace that one and no other.
 */
final class SharedWriter implements Callable<Tally> {
  private static final int MOST_FACED = 20;

  /** No two edits are alike, for one that changes nothing would be stored as no version. */
  private static final AtomicInteger EDITS = new AtomicInteger();

  private final HttpClient client;
  private final int port;
  private final int number;
  private final Acknowledged acknowledged;
  private final Duration duration;
  private final SplittableRandom random;
  private final Tally tally = new Tally();

  SharedWriter(
      HttpClient client, int port, int number, Acknowledged acknowledged, Duration duration) {
    this.client = client;
    this.port = port;
    this.number = number;
    this.acknowledged = acknowledged;
    this.duration = duration;
    this.random = new SplittableRandom(number);
  }

  @Override
  public Tally call() throws IOException, InterruptedException {
    long end = System.nanoTime() + duration.toNanos();
    while (System.nanoTime() < end) {
      String study = Acknowledged.study(random.nextInt(Acknowledged.STUDIES));
      write(study, "Invented by writer " + number + " in edit " + EDITS.incrementAndGet());
    }
    return tally;
  }

  /** Until it is stored, agreeing anew to each version that another wrote meanwhile. */
  private void write(String study, String title) throws IOException, InterruptedException {
    List<String> agreed = List.of();
    int replaced = 0;
    for (int faced = 0; faced < MOST_FACED; faced++) {
      JsonNode state = Upload.settled(client, port, files(study, title), agreed);
      JsonNode change = state.path("changes").path(0);
      switch (state.path("state").asText()) {
        case "done" -> {
          if (state.path("saved").asInt() != 1) {
            tally.fault("a write was told as done with nothing saved: " + state);
          }
          acknowledged.add(study, replaced + 1, title);
          return;
        }
        case "needs-acknowledgement" -> {
          if (!agreed.isEmpty()) {
            tally.conflict();
            if (change.path("version").asInt() <= replaced) {
              tally.fault("a conflict that names no later version: " + state);
            }
          }
          replaced = change.path("version").asInt();
          agreed = List.of(change.path("key").asText());
        }
        case "" -> tally.busyAnswer();
        default -> tally.fault("a write ended as " + state);
      }
    }
  }

  private static Map<String, String> files(String study, String title) {
    return Map.of(
        "studies.csv", "study_id,title\r\n" + study + "," + title + "\r\n",
        "arms.csv", "study_id,arm_id,method\r\n" + study + ",A,autograft\r\n");
  }
}
