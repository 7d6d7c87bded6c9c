package gapwise.server.home;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Answers that are kept for one state of the evidence base, each worked out once; when a change is
 * shown they are dropped. Safe for use by many threads: who asks for the same meanwhile waits for
 * it, who asks for something else does not.
 */
public final class Latest<K, T> {
  private final Function<K, T> work;
  private final Map<K, Once<T>> kept;
  private long change = -1;

  /**
   * @param most answers that are kept; the one asked least recently goes first
   */
  public Latest(int most, Function<K, T> work) {
    this.work = work;
    this.kept =
        new LinkedHashMap<>(16, 0.75f, true) {
          private static final long serialVersionUID = 1L;

          @Override
          protected boolean removeEldestEntry(Map.Entry<K, Once<T>> eldest) {
            return size() > most;
          }
        };
  }

  /**
   * The answer.
   *
   * @param now number of the last change that is shown
   */
  public T at(long now, K key) {
    return kept(now, key).get();
  }

  private Once<T> kept(long now, K key) {
    synchronized (kept) {
      if (now != change) {
        kept.clear();
        change = now;
      }
      return kept.computeIfAbsent(key, asked -> new Once<>(() -> work.apply(asked)));
    }
  }

  private static final class Once<T> {
    private final Supplier<T> work;
    private Optional<T> found = Optional.empty();

    Once(Supplier<T> work) {
      this.work = work;
    }

    synchronized T get() {
      if (found.isEmpty()) {
        found = Optional.of(work.get());
      }
      return found.get();
    }
  }
}
