package gapwise.server.account;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How often signing in may be tried. Each try counts as failed until it has succeeded, so that many
 * at one moment gain nothing. What counts: tries of one name from one address; of any name from one
 * address; of one name from addresses that this person never signed in from. Whoever signed in from
 * an address before is kept waiting by tries of that name from that address alone, so that others
 * lock a colleague out neither from elsewhere nor by other names. After the free tries each further
 * one waits twice as long as the one before.
 *
 * <p>It is kept in the memory of one process: a restart forgets it, and of several processes over
 * one evidence base each counts for itself.
 */
final class Throttle {
  /** Free tries, then pauses of 1, 2, 4 … seconds up to the longest. Common practice, no source. */
  private enum Kind {
    NAME_AT_ADDRESS(3, Duration.ofMinutes(5)),
    ADDRESS(10, Duration.ofMinutes(5)),
    NAME(30, Duration.ofMinutes(1));

    private final int free;
    private final Duration longest;

    Kind(int free, Duration longest) {
      this.free = free;
      this.longest = longest;
    }

    private Duration pause(int tries) {
      int doublings = Math.min(tries - free, 20);
      Duration pause = doublings < 0 ? Duration.ZERO : Duration.ofSeconds(1L << doublings);
      return pause.compareTo(longest) > 0 ? longest : pause;
    }
  }

  /** Tries are forgotten when none was made for so long. */
  private static final Duration FORGOTTEN = Duration.ofHours(1);

  /** Names and addresses remembered; the one not met for longest gives way. */
  private static final int MOST = 20_000;

  private final Clock clock;
  private final Map<Key, Tries> tries = remembered();
  private final Map<Key, Tries> known = remembered();

  private record Key(Kind kind, String name, String address) {}

  private record Tries(int count, Instant last) {}

  Throttle(Clock clock) {
    this.clock = clock;
  }

  private static Map<Key, Tries> remembered() {
    return new LinkedHashMap<>(16, 0.75f, true) {
      private static final long serialVersionUID = 1;

      @Override
      protected boolean removeEldestEntry(Map.Entry<Key, Tries> eldest) {
        return size() > MOST;
      }
    };
  }

  /**
   * Asks to try.
   *
   * @return how long to wait first; empty where it may be tried now, which then counts
   */
  synchronized Optional<Duration> attempt(String name, String address) {
    Instant now = clock.instant();
    Duration longest = Duration.ZERO;
    Key pair = new Key(Kind.NAME_AT_ADDRESS, name, address);
    boolean familiar = known.containsKey(pair);
    for (Key key : keys(name, address)) {
      if (key.kind() != Kind.NAME_AT_ADDRESS && familiar) {
        continue;
      }
      Tries made = made(key, now);
      Instant free = made.last().plus(key.kind().pause(made.count()));
      if (made.count() > 0 && now.isBefore(free)) {
        Duration left = Duration.between(now, free);
        longest = left.compareTo(longest) > 0 ? left : longest;
      }
    }
    if (!longest.isZero()) {
      return Optional.of(longest);
    }
    for (Key key : keys(name, address)) {
      tries.put(key, new Tries(made(key, now).count() + 1, now));
    }
    return Optional.empty();
  }

  private static Iterable<Key> keys(String name, String address) {
    return List.of(
        new Key(Kind.NAME_AT_ADDRESS, name, address),
        new Key(Kind.ADDRESS, "", address),
        new Key(Kind.NAME, name, ""));
  }

  private Tries made(Key key, Instant now) {
    Tries made = tries.getOrDefault(key, new Tries(0, now));
    return now.isBefore(made.last().plus(FORGOTTEN)) ? made : new Tries(0, now);
  }

  /** Takes back what a try counted, since it succeeded; those before it of the name at it too. */
  synchronized void succeeded(String name, String address) {
    Instant now = clock.instant();
    Key pair = new Key(Kind.NAME_AT_ADDRESS, name, address);
    tries.remove(pair);
    known.put(pair, new Tries(0, now));
    for (Key key : keys(name, address)) {
      // Those of other names stay: an own account buys no tries at those of others.
      tries.computeIfPresent(
          key, (same, made) -> new Tries(Math.max(0, made.count() - 1), made.last()));
    }
  }
}
