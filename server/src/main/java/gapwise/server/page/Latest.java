package gapwise.server.page;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/**
 * Answers that are kept for one state of the evidence base, each worked out once; when a change is
 * shown they are dropped. Safe for use by many threads; work is done outside the lock, so two
 * people who ask the same at once may both wait for it.
 */
final class Latest<K, T> {
  /** Answers that are kept; the one asked least recently goes first. */
  private static final int KEPT = 200;

  private final Function<K, T> work;
  private final Map<K, T> kept =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<K, T> eldest) {
          return size() > KEPT;
        }
      };
  private long change = -1;

  Latest(Function<K, T> work) {
    this.work = work;
  }

  /**
   * The answer.
   *
   * @param now number of the last change that is shown
   */
  T at(long now, K key) {
    synchronized (kept) {
      if (now != change) {
        kept.clear();
        change = now;
      }
      T known = kept.get(key);
      if (known != null) {
        return known;
      }
    }
    T found = work.apply(key);
    synchronized (kept) {
      if (now == change) {
        kept.put(key, found);
      }
    }
    return found;
  }
}
