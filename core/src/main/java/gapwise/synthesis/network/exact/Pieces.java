package gapwise.synthesis.network.exact;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Treatments in their order, the reference first, then by alphabet; the connected pieces of the
 * network; and which parameter each treatment's effect is: that against the first of its piece.
 */
final class Pieces {
  private final List<String> names;
  private final Map<String, Integer> order = new HashMap<>();
  private final List<CountedStudy> studies;
  private final int[] piece;
  private final int[] parameter;
  private final int pieces;

  private Pieces(List<String> names, List<CountedStudy> studies) {
    this.names = List.copyOf(names);
    this.studies = studies;
    for (int t = 0; t < names.size(); t++) {
      order.put(names.get(t), t);
    }
    piece = new int[names.size()];
    parameter = new int[names.size()];
    Arrays.fill(piece, CountLikelihood.NONE);
    List<int[]> joined = new ArrayList<>();
    for (CountedStudy study : studies) {
      int[] places = places(study);
      for (int j = 1; j < places.length; j++) {
        joined.add(new int[] {places[0], places[j]});
        joined.add(new int[] {places[j], places[0]});
      }
    }
    int found = 0;
    int parameters = 0;
    for (int t = 0; t < piece.length; t++) {
      if (piece[t] == CountLikelihood.NONE) {
        boolean[] reached = reached(t, joined);
        for (int other = 0; other < piece.length; other++) {
          piece[other] = reached[other] ? found : piece[other];
        }
        parameter[t] = CountLikelihood.NONE;
        found++;
      } else {
        parameter[t] = parameters++;
      }
    }
    pieces = found;
  }

  /** The pieces of studies that tell something; the reference comes first if it is in one. */
  static Pieces of(List<CountedStudy> studies, String reference) {
    TreeSet<String> all = new TreeSet<>();
    studies.forEach(study -> all.addAll(study.treatments()));
    List<String> names = new ArrayList<>();
    if (all.remove(reference)) {
      names.add(reference);
    }
    names.addAll(all);
    return new Pieces(names, studies);
  }

  /** The likelihood of its studies, or of others with the same treatments. */
  CountLikelihood likelihood(List<CountedStudy> counted) {
    return new CountLikelihood(
        counted.stream().map(StudyMarginal::of).toList(),
        counted.stream().map(this::parameters).toList(),
        parameters());
  }

  /** The place of a treatment. */
  int place(String name) {
    return Objects.requireNonNull(order.get(name), name);
  }

  /** Whether both treatments are there and in one piece. */
  boolean joins(String one, String other) {
    return order.containsKey(one) && order.containsKey(other) && together(place(one), place(other));
  }

  private int[] places(CountedStudy study) {
    return study.treatments().stream().mapToInt(this::place).toArray();
  }

  /** What can be reached along arrows. */
  private boolean[] reached(int from, List<int[]> arrows) {
    List<List<Integer>> next = new ArrayList<>();
    for (int t = 0; t < names.size(); t++) {
      next.add(new ArrayList<>());
    }
    arrows.forEach(arrow -> next.get(arrow[0]).add(arrow[1]));
    boolean[] reached = new boolean[names.size()];
    reached[from] = true;
    ArrayDeque<Integer> open = new ArrayDeque<>(List.of(from));
    while (!open.isEmpty()) {
      for (int to : next.get(open.remove())) {
        if (!reached[to]) {
          reached[to] = true;
          open.add(to);
        }
      }
    }
    return reached;
  }

  List<String> names() {
    return names;
  }

  int count() {
    return pieces;
  }

  int parameters() {
    return names.size() - pieces;
  }

  /** The parameter of each arm of a study. */
  private int[] parameters(CountedStudy study) {
    return Arrays.stream(places(study)).map(t -> parameter[t]).toArray();
  }

  boolean together(int one, int other) {
    return piece[one] == piece[other];
  }

  /** One treatment less another of its piece as a sum of parameters, with a place for tau. */
  double[] contrast(int one, int other) {
    double[] sum = new double[parameters() + 1];
    if (parameter[one] != CountLikelihood.NONE) {
      sum[parameter[one]] += 1;
    }
    if (parameter[other] != CountLikelihood.NONE) {
      sum[parameter[other]] -= 1;
    }
    return sum;
  }

  /** The names of each piece, in the order of treatments. */
  List<List<String>> listed() {
    List<List<String>> listed = new ArrayList<>();
    for (int i = 0; i < pieces; i++) {
      listed.add(new ArrayList<>());
    }
    for (int t = 0; t < names.size(); t++) {
      listed.get(piece[t]).add(names.get(t));
    }
    return listed;
  }

  /**
   * Some treatments whose odds could fall for ever beside those of the others of their piece, the
   * likelihood rising all the way; empty if there are none and the likelihood has a top for every
   * tau.
   *
   * <p>In each study some events of arm i could have been in arm j instead where i has an event and
   * j a patient without. The likelihood falls along every way out only if these arrows lead from
   * each treatment of a piece to each other: then no direction other than standing still goes along
   * with all of them.
   */
  Optional<List<String>> falling() {
    List<int[]> arrows = new ArrayList<>();
    for (CountedStudy study : studies) {
      int[] places = places(study);
      for (int i = 0; i < places.length; i++) {
        for (int j = 0; j < places.length; j++) {
          if (study.canMove(i, j)) {
            arrows.add(new int[] {places[i], places[j]});
          }
        }
      }
    }
    Optional<List<String>> fewest = Optional.empty();
    for (int t = 0; t < names.size(); t++) {
      boolean[] reached = reached(t, arrows);
      List<String> closed = new ArrayList<>();
      int all = 0;
      for (int other = 0; other < names.size(); other++) {
        if (reached[other]) {
          closed.add(names.get(other));
        }
        all += piece[other] == piece[t] ? 1 : 0;
      }
      if (closed.size() < all && (fewest.isEmpty() || closed.size() < fewest.get().size())) {
        fewest = Optional.of(List.copyOf(closed));
      }
    }
    return fewest;
  }
}
