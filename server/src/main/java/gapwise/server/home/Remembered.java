package gapwise.server.home;

import gapwise.budget.Memory;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.ToIntFunction;

/**
 * Answers about one state of the evidence base, each worked out once. Whoever makes one for another
 * state starts with none. Safe for use by many threads: who asks for the same meanwhile waits for
 * it, who asks for something else does not.
 */
public final class Remembered<K, T> implements Memory.Kept<K, T> {
  private final Function<K, T> work;
  private final int mostRows;
  private final ToIntFunction<T> rows;
  private final Map<K, Once<T>> kept;

  /**
   * @param most answers that are kept; the one asked least recently goes first
   */
  public Remembered(int most, Function<K, T> work) {
    this(most, Integer.MAX_VALUE, answer -> 0, work);
  }

  /**
   * Answers that may be large.
   *
   * @param most answers that are kept; the one asked least recently goes first
   * @param mostRows rows that these hold together; one answer stays, however many it holds
   * @param rows how many an answer holds
   */
  public Remembered(int most, int mostRows, ToIntFunction<T> rows, Function<K, T> work) {
    this.work = work;
    this.mostRows = mostRows;
    this.rows = rows;
    this.kept =
        new LinkedHashMap<>(16, 0.75f, true) {
          private static final long serialVersionUID = 1L;

          @Override
          protected boolean removeEldestEntry(Map.Entry<K, Once<T>> eldest) {
            return size() > most;
          }
        };
  }

  @Override
  public T of(K key) {
    Once<T> once = once(key);
    if (once.isFound()) {
      return once.get();
    }
    T found = once.get();
    if (rows(once) > 0) {
      leaveOff();
    }
    return found;
  }

  @Override
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

  /** Lets those go that were asked least recently, until the rows of the others are few enough. */
  private void leaveOff() {
    synchronized (kept) {
      long held = kept.values().stream().mapToLong(this::rows).sum();
      Iterator<Once<T>> leastRecent = kept.values().iterator();
      while (held > mostRows && leastRecent.hasNext()) {
        int rowsOfOne = rows(leastRecent.next());
        if (rowsOfOne > 0 && rowsOfOne < held) {
          leastRecent.remove();
          held -= rowsOfOne;
        }
      }
    }
  }

  /** None of an answer that is still being worked out. */
  private int rows(Once<T> once) {
    return once.found.map(rows::applyAsInt).orElse(0);
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
