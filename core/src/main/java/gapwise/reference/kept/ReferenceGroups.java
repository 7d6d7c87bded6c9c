package gapwise.reference.kept;

import gapwise.reference.kept.ReferenceDecision.Settled;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * Which kept references, and which studies, are one paper by what persons settled. Each group has
 * one record that leads it: the fullest, and of equals the one whose id comes first. Nothing is
 * merged. Safe for use by many threads.
 */
public final class ReferenceGroups {
  private final Map<String, String> roots;
  private final Map<String, List<String>> members;
  private final List<ReferenceDecision> against;

  private ReferenceGroups(
      Map<String, String> roots,
      Map<String, List<String>> members,
      List<ReferenceDecision> against) {
    this.roots = Map.copyOf(roots);
    this.members = Map.copyOf(members);
    this.against = List.copyOf(against);
  }

  /**
   * The groups.
   *
   * @param decisions the last decision about each pair
   * @param complete how full the record of each kept reference is, by its id
   */
  static ReferenceGroups of(
      Collection<ReferenceDecision> decisions, Map<String, Integer> complete) {
    Joining joining = new Joining();
    decisions.stream()
        .filter(one -> one.settled() == Settled.SAME)
        .forEach(one -> joining.join(one.first(), one.second()));
    Map<String, String> roots = new HashMap<>();
    Map<String, List<String>> members = new HashMap<>();
    for (String one : new TreeSet<>(joining.above.keySet())) {
      String root = joining.root(one);
      roots.put(one, root);
      members.computeIfAbsent(root, none -> new ArrayList<>()).add(one);
    }
    Comparator<String> fullest =
        Comparator.<String>comparingInt(one -> -complete.getOrDefault(one, 0))
            .thenComparing(Comparator.naturalOrder());
    members.values().forEach(group -> group.sort(fullest));
    List<ReferenceDecision> against =
        decisions.stream()
            .filter(one -> one.settled() != Settled.SAME)
            .filter(one -> areOne(roots, one))
            .toList();
    return new ReferenceGroups(roots, members, against);
  }

  private static boolean areOne(Map<String, String> roots, ReferenceDecision decision) {
    return roots
        .getOrDefault(decision.first(), decision.first())
        .equals(roots.getOrDefault(decision.second(), decision.second()));
  }

  /** Members joined one pair after another. */
  private static final class Joining {
    private final Map<String, String> above = new HashMap<>();

    void join(String one, String other) {
      above.putIfAbsent(one, one);
      above.putIfAbsent(other, other);
      above.put(root(other), root(one));
    }

    String root(String member) {
      String at = member;
      String next = above.getOrDefault(at, at);
      while (!next.equals(at)) {
        // Each look halves the way for the next one.
        above.put(at, above.getOrDefault(next, next));
        at = next;
        next = above.getOrDefault(at, at);
      }
      return at;
    }
  }

  /** One name for all of a paper; a member without a copy is its own. */
  String root(String member) {
    return roots.getOrDefault(member, member);
  }

  /** Whether two are one paper. */
  public boolean areOne(String one, String other) {
    return root(one).equals(root(other));
  }

  /** All of the paper of a member, the fullest first; itself alone where it has no copy. */
  public List<String> of(String member) {
    return List.copyOf(members.getOrDefault(root(member), List.of(member)));
  }

  /** The record that stands for the paper of a kept reference. */
  public String leading(String reference) {
    return of(reference).stream().filter(KeptReference::isId).findFirst().orElse(reference);
  }

  /** The studies of the paper of a kept reference. */
  public List<String> studies(String reference) {
    return of(reference).stream().flatMap(one -> Member.study(one).stream()).toList();
  }

  /** Decisions that hold two apart which others make one: a person must settle one of them anew. */
  public List<ReferenceDecision> contradictions() {
    return against;
  }
}
