package gapwise.server.admission;

import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.budget.Budget;
import io.javalin.config.RoutesConfig;
import java.io.IOException;
import java.net.Socket;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Lines that are only held, and answers that are not read. */
@Timeout(120)
class ConnectionsTest {
  /** More than this door has threads. */
  private static final int CROWD = Door.THREADS + 10;

  /** More than the system takes in for a reader on this machine who does not read. */
  private static final int LARGE = 8_000_000;

  private static final int HUGE = 64_000_000;

  @TempDir Path folder;

  private Door door(int connections, Pace answer) {
    Bounds usual = Bounds.standard();
    return new Door(
        new Bounds(
            connections,
            usual.header(),
            usual.body(),
            answer,
            LARGE,
            usual.spoolBytes(),
            4,
            usual.waiting(),
            Budget.UNLIMITED),
        folder,
        ConnectionsTest::routes);
  }

  private static void routes(RoutesConfig routes) {
    routes.get("/studies", context -> context.result("studies"));
    routes.get("/method", context -> context.result(new byte[LARGE - 1_000]));
    routes.get("/", context -> context.result(new byte[HUGE]));
  }

  private static void close(List<Socket> lines) throws IOException {
    for (Socket line : lines) {
      line.close();
    }
  }

  @Test
  void linesThatSayNothingMakeRoomForOthers() throws Exception {
    List<Socket> silent = new ArrayList<>();
    try (Door door = door(20, Bounds.standard().answer())) {
      for (int i = 0; i < 30; i++) {
        silent.add(door.line());
      }
      assertTrue(door.answer(Door.get("/studies")).endsWith("studies"));
    } finally {
      close(silent);
    }
  }

  @Test
  void aCrowdThatDoesNotReadItsAnswersKeepsNobodyWaiting() throws Exception {
    List<Socket> crowd = new ArrayList<>();
    try (Door door = door(1_000, Bounds.standard().answer())) {
      for (int i = 0; i < CROWD; i++) {
        Socket line = door.line();
        crowd.add(line);
        Door.send(line, Door.get("/method"));
      }
      assertTrue(door.answer(Door.get("/studies")).endsWith("studies"));
      assertTrue(Door.rest(crowd.get(0)).length() > LARGE - 1_000, "whoever reads late has it all");
    } finally {
      close(crowd);
    }
  }

  @Test
  void anAnswerThatIsTakenTooSlowlyIsEnded() throws Exception {
    Pace impossible = new Pace(Duration.ZERO, Long.MAX_VALUE / 2, Duration.ofHours(1));
    try (Door door = door(10, impossible);
        Socket line = door.line()) {
      Door.send(line, Door.get("/"));
      long came = 0;
      try {
        came = line.getInputStream().transferTo(java.io.OutputStream.nullOutputStream());
      } catch (IOException cut) {
        // ended, as it should be
      }
      assertTrue(came < HUGE, "all of it came: " + came);
    }
  }
}
