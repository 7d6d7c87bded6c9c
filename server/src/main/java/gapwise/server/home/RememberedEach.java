package gapwise.server.home;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * What is known of many things in one state of the evidence base, asked for many at a time: those
 * that are not there yet are looked up together. Safe for use by many threads; two who ask for the
 * same at once may both look it up.
 */
public final class RememberedEach<K, T> {
  private final Function<List<K>, Map<K, T>> work;
  private final Map<K, Optional<T>> kept;

  /**
   * @param most things that are kept; the one asked for least recently goes first
   * @param work looks things up; says nothing of those of which nothing is known
   */
  public RememberedEach(int most, Function<List<K>, Map<K, T>> work) {
    this.work = work;
    this.kept =
        new LinkedHashMap<>(16, 0.75f, true) {
          private static final long serialVersionUID = 1L;

          @Override
          protected boolean removeEldestEntry(Map.Entry<K, Optional<T>> eldest) {
            return size() > most;
          }
        };
  }

  /** What is known of each; a thing of which nothing is known is not among them. */
  public Map<K, T> of(Collection<K> keys) {
    Map<K, T> found = new HashMap<>();
    List<K> missing = new ArrayList<>();
    synchronized (kept) {
      for (K key : keys) {
        Optional<T> known = kept.get(key);
        if (known == null) {
          missing.add(key);
        } else {
          known.ifPresent(one -> found.put(key, one));
        }
      }
    }
    if (!missing.isEmpty()) {
      Map<K, T> read = work.apply(missing);
      found.putAll(read);
      synchronized (kept) {
        missing.forEach(key -> kept.put(key, Optional.ofNullable(read.get(key))));
      }
    }
    return found;
  }
}
