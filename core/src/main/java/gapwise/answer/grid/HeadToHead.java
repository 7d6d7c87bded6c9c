package gapwise.answer.grid;

import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.search.IndexedArm;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;

/**
 * Which methods stand side by side within a study.
 *
 * @param members methods of the studies that hold two or more, with those studies and their
 *     patients, in the order of the vocabulary
 * @param pairs pairs of methods that a study holds, those of most studies first
 * @param studies number of studies that hold two or more methods
 */
public record HeadToHead(Map<Method, Member> members, List<Pair> pairs, int studies) {

  /** A method in the studies that hold it beside another. */
  public record Member(int studies, long patients) {}

  /**
   * Two methods side by side.
   *
   * @param one the method that stands first in the vocabulary
   * @param patients patients of both methods in those studies
   * @param designs number of studies of each design, best first
   * @param studyIds the studies, best design first, then by name
   */
  public record Pair(
      Method one,
      Method other,
      long patients,
      Map<Design, Integer> designs,
      List<String> studyIds) {
    public Pair {
      Map<Design, Integer> ordered = new EnumMap<>(Design.class);
      ordered.putAll(designs);
      designs = Collections.unmodifiableMap(ordered);
      studyIds = List.copyOf(studyIds);
    }

    /** Number of studies. */
    public int studies() {
      return studyIds.size();
    }
  }

  public HeadToHead {
    members = Collections.unmodifiableMap(new LinkedHashMap<>(members));
    pairs = List.copyOf(pairs);
  }

  /** Pairs of these methods that no study holds, in the order given. */
  public List<Map.Entry<Method, List<Method>>> missing(List<Method> methods) {
    List<Map.Entry<Method, List<Method>>> missing = new ArrayList<>();
    for (Method one : methods) {
      List<Method> others =
          methods.stream()
              .filter(other -> !other.equals(one))
              .filter(other -> pairs.stream().noneMatch(pair -> joins(pair, one, other)))
              .toList();
      if (!others.isEmpty()) {
        missing.add(Map.entry(one, others));
      }
    }
    return missing;
  }

  private static boolean joins(Pair pair, Method one, Method other) {
    return (pair.one().equals(one) && pair.other().equals(other))
        || (pair.one().equals(other) && pair.other().equals(one));
  }

  private record Held(String studyId, Optional<Design> design) {
    int rank() {
      return design.map(Design::ordinal).orElse(Design.values().length);
    }
  }

  private static final class PairSum {
    private final List<Held> held = new ArrayList<>();
    private long patients;
  }

  /** Finds the pairs. The arms of a study must come one after another. */
  public static final class Finding implements Consumer<IndexedArm> {
    private final List<Method> order = Method.vocabulary().all();
    private final Map<Integer, Long> current = new TreeMap<>();
    private final Map<Integer, Member> members = new TreeMap<>();
    private final Map<Integer, Map<Integer, PairSum>> pairs = new TreeMap<>();
    private final Map<String, Integer> places = new LinkedHashMap<>();
    private Optional<IndexedArm> last = Optional.empty();
    private int studies;

    /** Nothing found yet. */
    public Finding() {
      order.forEach(method -> places.put(method.code(), places.size()));
    }

    @Override
    public void accept(IndexedArm arm) {
      if (last.filter(before -> !before.studyId().equals(arm.studyId())).isPresent()) {
        closeStudy();
      }
      last = Optional.of(arm);
      Integer place = places.get(arm.method());
      if (place != null) {
        current.merge(place, (long) arm.patients().orElse(0), Long::sum);
      }
    }

    private void closeStudy() {
      if (current.size() > 1) {
        studies++;
        current.forEach(
            (one, patients) -> {
              members.merge(one, new Member(1, patients), Finding::sum);
              current.forEach(
                  (other, more) -> {
                    if (one < other) {
                      pair(one, other, patients + more);
                    }
                  });
            });
      }
      current.clear();
    }

    private static Member sum(Member a, Member b) {
      return new Member(a.studies() + b.studies(), a.patients() + b.patients());
    }

    private void pair(int one, int other, long patients) {
      PairSum sum =
          pairs
              .computeIfAbsent(one, place -> new TreeMap<>())
              .computeIfAbsent(other, place -> new PairSum());
      last.ifPresent(arm -> sum.held.add(new Held(arm.studyId(), arm.design())));
      sum.patients += patients;
    }

    /** What was found in the arms taken. */
    public HeadToHead found() {
      closeStudy();
      List<Pair> found = new ArrayList<>();
      pairs.forEach(
          (one, others) ->
              others.forEach(
                  (other, sum) -> found.add(pair(order.get(one), order.get(other), sum))));
      found.sort(
          Comparator.comparingInt(Pair::studies).thenComparingLong(Pair::patients).reversed());
      Map<Method, Member> named = new LinkedHashMap<>();
      members.forEach((place, member) -> named.put(order.get(place), member));
      return new HeadToHead(named, found, studies);
    }

    private static Pair pair(Method one, Method other, PairSum sum) {
      Map<Design, Integer> designs = new EnumMap<>(Design.class);
      sum.held.forEach(held -> held.design().ifPresent(d -> designs.merge(d, 1, Integer::sum)));
      List<String> ids =
          sum.held.stream()
              .sorted(Comparator.comparingInt(Held::rank).thenComparing(Held::studyId))
              .map(Held::studyId)
              .toList();
      return new Pair(one, other, sum.patients, designs, ids);
    }
  }
}
