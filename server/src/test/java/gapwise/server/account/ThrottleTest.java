package gapwise.server.account;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Guessing grows slow, and nobody is locked out by what others guess. */
class ThrottleTest {
  private final SetClock clock = new SetClock();
  private final Throttle throttle = new Throttle(clock);

  private void tried(int times, String name, String address) {
    for (int i = 0; i < times; i++) {
      Optional<Duration> wait = throttle.attempt(name, address);
      wait.ifPresent(clock::pass);
      if (wait.isPresent()) {
        assertEquals(Optional.empty(), throttle.attempt(name, address));
      }
    }
  }

  @Test
  void threeTriesAreFreeAndThenEachPauseIsTwiceTheOneBefore() {
    for (int i = 0; i < 3; i++) {
      assertEquals(Optional.empty(), throttle.attempt("ann", "a"));
    }
    for (int seconds = 1; seconds <= 64; seconds *= 2) {
      assertEquals(Optional.of(Duration.ofSeconds(seconds)), throttle.attempt("ann", "a"));
      clock.pass(Duration.ofSeconds(seconds).minusMillis(1));
      assertEquals(Optional.of(Duration.ofMillis(1)), throttle.attempt("ann", "a"));
      clock.pass(Duration.ofMillis(1));
      assertEquals(Optional.empty(), throttle.attempt("ann", "a"));
    }
  }

  @Test
  void noPauseIsLongerThanFiveMinutesAndAnHourOfRestForgets() {
    tried(40, "ann", "a");
    Duration wait = throttle.attempt("ann", "a").orElseThrow();
    assertEquals(Duration.ofMinutes(5), wait);
    clock.pass(Duration.ofHours(1));
    assertEquals(Optional.empty(), throttle.attempt("ann", "a"));
    assertEquals(Optional.empty(), throttle.attempt("ann", "a"));
  }

  /** In an hour an address gets no further than a few dozen tries, whatever the names. */
  @Test
  void oneAddressCannotTryManyNames() {
    int passed = 0;
    for (int second = 0; second < 3600; second++) {
      passed += throttle.attempt("name" + second, "a").isEmpty() ? 1 : 0;
      clock.pass(Duration.ofSeconds(1));
    }
    assertTrue(passed <= 32, "passed " + passed);
  }

  /** In an hour many addresses get no further than about a hundred tries of one name. */
  @Test
  void manyAddressesCannotTryOneName() {
    int passed = 0;
    for (int second = 0; second < 3600; second++) {
      passed += throttle.attempt("ann", "address" + second).isEmpty() ? 1 : 0;
      clock.pass(Duration.ofSeconds(1));
    }
    assertTrue(passed <= 100, "passed " + passed);
  }

  @Test
  void whoSignedInFromAnAddressIsNotKeptWaitingByWhatOthersTryElsewhere() {
    assertEquals(Optional.empty(), throttle.attempt("ann", "desk"));
    throttle.succeeded("ann", "desk");
    for (int i = 0; i < 500; i++) {
      throttle.attempt("ann", "enemy" + i);
      throttle.attempt("name" + i, "desk");
    }
    assertTrue(throttle.attempt("ann", "new place").isPresent());
    assertTrue(throttle.attempt("bo", "desk").isPresent());
    assertEquals(Optional.empty(), throttle.attempt("ann", "desk"));
  }

  @Test
  void signingInTakesBackItsOwnTriesAndNoneOfOtherNames() {
    tried(3, "ann", "a");
    throttle.succeeded("ann", "a");
    assertEquals(Optional.empty(), throttle.attempt("ann", "a"));
    throttle.succeeded("ann", "a");
    for (int i = 0; i < 30; i++) {
      throttle.attempt("victim" + i, "b");
      if (throttle.attempt("own", "b").isEmpty()) {
        throttle.succeeded("own", "b");
      }
    }
    assertTrue(throttle.attempt("victim", "b").isPresent(), "an own account buys no tries");
  }

  @Test
  void manyAtOneMomentGainNothing() {
    AtomicInteger passed = new AtomicInteger();
    IntStream.range(0, 200)
        .parallel()
        .forEach(i -> passed.addAndGet(throttle.attempt("ann", "a").isEmpty() ? 1 : 0));
    assertEquals(3, passed.get());
  }
}
