package gapwise.server.admission;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.budget.Budget;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.budget.WorkStoppedException;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.net.Socket;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** How many compute at once, and until when. */
@Timeout(60)
class ComputingTest {
  private static final Duration NOT_LONG = Duration.ofMillis(50);
  private static final String PLAN = "/api/v1/syntheses";

  @TempDir Path folder;

  private static Bounds bounds(int computing, Duration waiting, Budget budget) {
    Bounds usual = Bounds.standard();
    return new Bounds(
        usual.connections(),
        usual.header(),
        usual.body(),
        usual.answer(),
        usual.answerBytes(),
        usual.spoolBytes(),
        computing,
        waiting,
        budget);
  }

  /** Computing that goes on until it is stopped, and what stopped it. */
  private static final class Endless {
    final CountDownLatch begun = new CountDownLatch(1);
    final CountDownLatch ended = new CountDownLatch(1);
    final AtomicReference<WorkStoppedException> stop = new AtomicReference<>();

    void compute(Context context) {
      begun.countDown();
      try {
        while (true) {
          Work.check();
          Thread.onSpinWait();
        }
      } catch (WorkStoppedException stopped) {
        stop.set(stopped);
        context.result("stopped");
      } finally {
        ended.countDown();
      }
    }
  }

  @Test
  void whoLeavesTakesTheComputingAlong() throws Exception {
    Endless plan = new Endless();
    Bounds bounds = bounds(1, Duration.ofSeconds(30), Budget.UNLIMITED);
    try (Door door = new Door(bounds, folder, routes -> routes.post(PLAN, plan::compute))) {
      Socket line = door.line();
      Door.send(line, Door.post(PLAN, "Content-Length: 2\r\n", "{}"));
      assertTrue(plan.begun.await(30, TimeUnit.SECONDS));
      line.close();
      assertTrue(plan.ended.await(30, TimeUnit.SECONDS), "still computing for nobody");
      assertTrue(plan.stop.get().isAbandoned());
    }
  }

  @Test
  void computingEndsWithItsBudgetThoughSomebodyWaits() throws Exception {
    Endless plan = new Endless();
    Bounds bounds = bounds(1, NOT_LONG, Budget.UNLIMITED.with(Limit.SECONDS, 1));
    try (Door door = new Door(bounds, folder, routes -> routes.post(PLAN, plan::compute))) {
      String answer =
          door.answer(Door.post(PLAN, "Connection: close\r\nContent-Length: 2\r\n", "{}"));
      assertTrue(answer.endsWith("stopped"), answer);
      assertEquals("takes-too-long", plan.stop.get().problem().code());
    }
  }

  @Test
  void requestsSentAheadAreAllAnsweredInTheirOrder() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch go = new CountDownLatch(1);
    Bounds bounds = bounds(1, Duration.ofSeconds(30), Budget.UNLIMITED);
    try (Door door = new Door(bounds, folder, routes -> ahead(routes, begun, go));
        Socket line = door.line()) {
      Door.send(line, "GET /held HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n");
      assertTrue(begun.await(30, TimeUnit.SECONDS));
      // While the first is computed the others arrive, one of them with a body, in small pieces.
      for (int i = 0; i < 40; i++) {
        Door.send(line, "GET /named?n=" + i + " HTTP/1.1\r\nHo");
        Door.send(line, "st: 127.0.0.1\r\n\r\n");
      }
      Door.send(line, Door.post("/echo", "Content-Length: 5\r\n", "he"));
      // Only now may the first end: whoever looks whether the line is open has had time to read.
      assertTrue(looked(line));
      go.countDown();
      Door.send(line, "llo" + Door.get("/named?n=last"));
      String all = Door.rest(line);
      StringBuilder expected = new StringBuilder("[held]");
      for (int i = 0; i < 40; i++) {
        expected.append("[").append(i).append("]");
      }
      expected.append("[hello][last]");
      assertEquals(expected.toString(), all.replaceAll("(?s)[^\\[]*(\\[\\w+\\])[^\\[]*", "$1"));
    }
  }

  private static void ahead(RoutesConfig routes, CountDownLatch begun, CountDownLatch go) {
    routes.get(
        "/held",
        context -> {
          begun.countDown();
          assertTrue(go.await(30, TimeUnit.SECONDS));
          context.result("[held]");
        });
    routes.get("/named", context -> context.result("[" + context.queryParam("n") + "]"));
    routes.post("/echo", context -> context.result("[" + context.body() + "]"));
  }

  /** Waits as long as it takes to look at every connection twice; nothing is answered meanwhile. */
  private static boolean looked(Socket line) throws Exception {
    line.setSoTimeout((int) (2 * Departures.LOOK.toMillis()));
    try {
      return line.getInputStream().read() < 0;
    } catch (java.net.SocketTimeoutException silent) {
      line.setSoTimeout(30_000);
      return true;
    }
  }

  @Test
  void whoFindsEverySeatTakenIsToldWhenToComeBackAndPlainPagesAreOpen() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch go = new CountDownLatch(1);
    Bounds bounds = bounds(1, NOT_LONG, Budget.UNLIMITED);
    try (Door door = new Door(bounds, folder, routes -> crowded(routes, begun, go));
        Socket first = door.line()) {
      Door.send(first, Door.post(PLAN, "Connection: close\r\nContent-Length: 4\r\n", "hold"));
      assertTrue(begun.await(30, TimeUnit.SECONDS));
      String second =
          door.answer(Door.post(PLAN, "Connection: close\r\nContent-Length: 2\r\n", "{}"));
      assertTrue(second.startsWith("HTTP/1.1 503"), second);
      assertTrue(second.contains("Retry-After: 15"), second);
      assertTrue(second.contains("try again in a moment"), second);
      assertTrue(door.answer(Door.get("/studies")).endsWith("studies"));
      assertTrue(door.answer(Door.get("/pooled")).endsWith("pooled"), "answers wait for no plan");
      go.countDown();
      assertTrue(Door.rest(first).endsWith("held"));
      assertTrue(
          door.answer(Door.post(PLAN, "Connection: close\r\nContent-Length: 2\r\n", "{}"))
              .endsWith("planned"));
    }
  }

  private static void crowded(RoutesConfig routes, CountDownLatch begun, CountDownLatch go) {
    routes.post(
        PLAN,
        context -> {
          if (context.body().equals("hold")) {
            begun.countDown();
            assertTrue(go.await(30, TimeUnit.SECONDS));
            context.result("held");
          } else {
            context.result("planned");
          }
        });
    routes.get("/studies", context -> context.result("studies"));
    routes.get("/pooled", context -> context.result("pooled"));
  }

  @Test
  void whoNeedsMoreMemoryThanThereIsIsToldSoAndOthersAreAnswered() throws Exception {
    Bounds bounds = bounds(1, NOT_LONG, Budget.UNLIMITED);
    try (Door door =
        new Door(
            bounds,
            folder,
            routes -> {
              routes.get(
                  "/large", context -> context.result("" + new long[Integer.MAX_VALUE].length));
              routes.get("/studies", context -> context.result("studies"));
            })) {
      String answer = door.answer(Door.get("/large"));
      assertTrue(answer.startsWith("HTTP/1.1 503"), answer);
      assertTrue(answer.contains("more memory than the server has free"), answer);
      assertTrue(door.answer(Door.get("/studies")).endsWith("studies"));
    }
  }
}
