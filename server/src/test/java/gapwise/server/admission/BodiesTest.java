package gapwise.server.admission;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.budget.Budget;
import io.javalin.config.RoutesConfig;
import java.io.IOException;
import java.net.Socket;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What is sent: whole before anybody computes, and neither too slow nor too large. */
@Timeout(120)
class BodiesTest {
  /** More than the web server has threads. */
  private static final int CROWD = 300;

  private static final Pace USUAL = Bounds.standard().body();
  private static final Pace STRICT = new Pace(Duration.ofMillis(300), 10_000, Duration.ofHours(1));
  private static final String JSON = "Content-Type: application/json\r\n";

  @TempDir Path folder;

  private Door door(Pace body, Duration header, long spoolBytes) {
    Bounds usual = Bounds.standard();
    Bounds bounds =
        new Bounds(
            1_000,
            header,
            body,
            usual.answer(),
            usual.answerBytes(),
            spoolBytes,
            4,
            usual.waiting(),
            Budget.UNLIMITED);
    return new Door(bounds, folder, BodiesTest::routes);
  }

  private Door door(Pace body) {
    return door(body, Bounds.standard().header(), Bounds.standard().spoolBytes());
  }

  private static void routes(RoutesConfig routes) {
    routes.get("/studies", context -> context.result("studies"));
    routes.post("/length", context -> context.result("bytes " + context.bodyAsBytes().length));
  }

  private static String begun(int length) {
    return Door.post("/length", JSON + "Content-Length: " + length + "\r\n", "{");
  }

  /** The same on a line that the server closes after its answer, so that all of it can be read. */
  private static String begunAndClosedAfter(int length) {
    return Door.post(
        "/length", JSON + "Connection: close\r\nContent-Length: " + length + "\r\n", "{");
  }

  @Test
  void aCrowdThatSendsSlowlyKeepsNobodyWaiting() throws Exception {
    try (Door door = door(USUAL)) {
      List<Socket> crowd = new ArrayList<>();
      try {
        for (int i = 0; i < CROWD; i++) {
          Socket line = door.line();
          crowd.add(line);
          Door.send(line, begunAndClosedAfter(3));
        }
        assertTrue(door.answer(Door.get("/studies")).endsWith("studies"));
        for (Socket line : crowd) {
          Door.send(line, " }");
        }
        for (Socket line : crowd) {
          assertTrue(Door.rest(line).endsWith("bytes 3"));
        }
      } finally {
        for (Socket line : crowd) {
          line.close();
        }
      }
    }
  }

  @Test
  void aBodyThatDripsIsEndedThoughItIsNeverSilent() throws Exception {
    try (Door door = door(STRICT);
        Socket line = door.line()) {
      Door.send(line, begun(100_000));
      String answer = dripping(line, " ");
      assertTrue(answer.startsWith("HTTP/1.1 408"), answer);
      assertTrue(answer.contains("came too slowly"), answer);
    }
  }

  @Test
  void aHeaderThatDripsIsEndedThoughItIsNeverSilent() throws Exception {
    try (Door door = door(USUAL, Duration.ofMillis(300), 0);
        Socket line = door.line()) {
      Door.send(line, "GET /studies HTTP/1.1\r\nHost: 127.0.0.1\r\n");
      assertEquals("", dripping(line, "X: y\r\n"), "closed without an answer");
      assertTrue(door.answer(Door.get("/studies")).endsWith("studies"));
    }
  }

  /** Sends a bit whenever nothing has come for a while, until the other side closes. */
  private static String dripping(Socket line, String drip) throws IOException {
    line.setSoTimeout(60);
    StringBuilder came = new StringBuilder();
    while (true) {
      try {
        int next = line.getInputStream().read();
        if (next < 0) {
          return came.toString();
        }
        came.append((char) next);
      } catch (SocketTimeoutException silence) {
        Door.send(line, drip);
      } catch (SocketException reset) {
        return came.toString();
      }
    }
  }

  @Test
  void aBodyOnTheDiskComesWholeAndLeavesNothingBehind() throws Exception {
    int length = 3_000_000;
    try (Door door = door(USUAL)) {
      String answer =
          door.answer(
              Door.post(
                  "/length",
                  JSON + "Connection: close\r\nContent-Length: " + length + "\r\n",
                  "x".repeat(length)));
      assertTrue(answer.endsWith("bytes " + length), answer);
    }
    try (Stream<Path> left = Files.list(folder)) {
      assertEquals(List.of(), left.toList());
    }
  }

  @Test
  void whoSendsTooMuchReadsThatItIsTooMuch() throws Exception {
    byte[] piece = "x".repeat(1 << 20).getBytes(StandardCharsets.US_ASCII);
    try (Door door = door(USUAL);
        Socket line = door.line()) {
      Door.send(
          line,
          Door.post("/length", JSON + "Connection: close\r\nTransfer-Encoding: chunked\r\n", ""));
      for (int i = 0; i < 12; i++) { // 12 MB, and 8 are taken
        Door.send(line, Integer.toHexString(piece.length) + "\r\n");
        line.getOutputStream().write(piece);
        Door.send(line, "\r\n");
      }
      Door.send(line, "0\r\n\r\n");
      String answer = Door.rest(line);
      assertTrue(answer.startsWith("HTTP/1.1 413"), answer);
      assertTrue(answer.contains("8 MB"), answer);
    }
  }

  @Test
  void whatHasNoRoomIsToldToComeBack() throws Exception {
    String large =
        Door.post("/length", JSON + "Connection: close\r\nContent-Length: 60000\r\n", "");
    try (Door door = door(USUAL, Duration.ofSeconds(10), 50_000)) {
      String answer = door.answer(large + "x".repeat(60_000));
      assertTrue(answer.startsWith("HTTP/1.1 503"), answer);
      assertTrue(answer.contains("as it has room for"), answer);
    }
  }

  @Test
  void roomIsSharedByAllAndGivenBack() throws Exception {
    Spool spool = new Spool(folder, 100_000);
    try (KeptBody first = new KeptBody(spool);
        KeptBody second = new KeptBody(spool)) {
      first.add(ByteBuffer.allocate(60_000));
      assertThrows(BusyException.class, () -> second.add(ByteBuffer.allocate(60_000)));
      first.close();
      second.add(ByteBuffer.allocate(60_000));
    }
  }

  @Test
  void aBodyThatEndsBeforeItsEndIsTheSendersFault() throws Exception {
    try (Door door = door(USUAL);
        Socket line = door.line()) {
      Door.send(line, begun(100));
      line.shutdownOutput();
      String answer = Door.rest(line);
      assertTrue(answer.isEmpty() || answer.startsWith("HTTP/1.1 400"), answer);
    }
  }

  @Test
  void whoIsToldToGoOnGoesOn() throws Exception {
    try (Door door = door(USUAL);
        Socket line = door.line()) {
      Door.send(
          line,
          Door.post(
              "/length",
              JSON + "Connection: close\r\nExpect: 100-continue\r\nContent-Length: 2\r\n",
              ""));
      byte[] told = line.getInputStream().readNBytes("HTTP/1.1 100 Continue".length());
      assertEquals("HTTP/1.1 100 Continue", new String(told, StandardCharsets.US_ASCII));
      Door.send(line, "{}");
      assertTrue(Door.rest(line).endsWith("bytes 2"));
    }
  }
}
