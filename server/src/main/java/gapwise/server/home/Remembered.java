package gapwise.server.home;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Answers about one state of the evidence base, each worked out once. Whoever makes one for another
 * state starts with none. Safe for use by many threads: who asks for the same meanwhile waits for
 * it, who asks for something else does not.
 */
public final class Remembered<K, T> {
  private final Function<K, T> work;
  private final Map<K, Once<T>> kept;

  /**
   * @param most answers that are kept; the one asked least recently goes first
   */
  public Remembered(int most, Function<K, T> work) {
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

  /** The answer. */
  public T of(K key) {
    return once(key).get();
  }

  /** Whether the answer is there already, so that who asks for it waits for nothing. */
  public boolean has(K key) {
    Once<T> once;
    synchronized (kept) {
      once = kept.get(key);
    }
    return once != null && once.isFound();
  }

  private Once<T> once(K key) {
    synchronized (kept) {
      return kept.computeIfAbsent(key, asked -> new Once<>(() -> work.apply(asked)));
    }
  }

  private static final class Once<T> {
    private final Supplier<T> work;
    private volatile Optional<T> found = Optional.empty();

    Once(Supplier<T> work) {
      this.work = work;
    }

    boolean isFound() {
      return found.isPresent();
    }

    synchronized T get() {
      if (found.isEmpty()) {
        found = Optional.of(work.get());
      }
      return found.get();
    }
  }
}
