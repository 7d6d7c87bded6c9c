package gapwise.cohort;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.LongPredicate;
import java.util.stream.LongStream;

/**
 * Which studies share a sign. A sign that very many share says nothing of two of them, and is left
 * out and counted.
 */
final class Candidates {
  /**
   * More studies than this under one sign are no hospital, team or paper any more. With 20,000
   * studies of 200 hospitals and eight methods some dozen share the sign of hospital and method.
   */
  private static final int MOST_UNDER_ONE_SIGN = 2000;

  /** More tables than this that hold one age and length: too usual a patient to tell by. */
  private static final int MOST_WITH_ONE_ROW = 400;

  private final List<Keys> keys;
  private int tooCommon;

  Candidates(List<Keys> keys) {
    this.keys = List.copyOf(keys);
  }

  /**
   * The pairs, each once, the smaller place in the upper half of the number.
   *
   * @param wanted whether a pair is wanted
   */
  LongStream pairs(LongPredicate wanted) {
    Set<Long> pairs = new HashSet<>();
    Map<Long, List<Integer>> own = places(Keys::own);
    for (int at = 0; at < keys.size(); at++) {
      for (long sign : keys.get(at).sought()) {
        List<Integer> others = own.getOrDefault(sign, List.of());
        if (others.size() <= MOST_UNDER_ONE_SIGN) {
          for (int other : others) {
            add(at, other, wanted, pairs);
          }
        }
      }
    }
    tooCommon =
        (int) own.values().stream().filter(list -> list.size() > MOST_UNDER_ONE_SIGN).count();
    own.clear();
    sharingRows(wanted, pairs);
    return pairs.stream().mapToLong(Long::longValue).sorted();
  }

  /** How many signs were too common to compare by; 0 before pairs were asked for. */
  int tooCommon() {
    return tooCommon;
  }

  private void sharingRows(LongPredicate wanted, Set<Long> pairs) {
    Map<Long, Integer> shared = new HashMap<>();
    for (List<Integer> holders : places(Keys::rows).values()) {
      if (holders.size() > MOST_WITH_ONE_ROW) {
        continue;
      }
      for (int a = 0; a < holders.size(); a++) {
        for (int b = a + 1; b < holders.size(); b++) {
          long pair = pair(holders.get(a), holders.get(b));
          if (wanted.test(pair)) {
            shared.merge(pair, 1, Integer::sum);
          }
        }
      }
    }
    shared.forEach(
        (pair, rows) -> {
          if (rows >= SharedRows.LEAST) {
            pairs.add(pair);
          }
        });
  }

  private Map<Long, List<Integer>> places(java.util.function.Function<Keys, Set<Long>> signs) {
    Map<Long, List<Integer>> places = new HashMap<>();
    for (int at = 0; at < keys.size(); at++) {
      for (long sign : signs.apply(keys.get(at))) {
        places.computeIfAbsent(sign, key -> new ArrayList<>(1)).add(at);
      }
    }
    return places;
  }

  private static void add(int one, int two, LongPredicate wanted, Set<Long> pairs) {
    if (one != two) {
      long pair = pair(one, two);
      if (wanted.test(pair)) {
        pairs.add(pair);
      }
    }
  }

  private static long pair(int one, int two) {
    return ((long) Math.min(one, two) << 32) | Math.max(one, two);
  }

  static int first(long pair) {
    return (int) (pair >>> 32);
  }

  static int second(long pair) {
    return (int) pair;
  }
}
