package gapwise.reference.pair;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Compares what is worth comparing of a list of references. */
final class Pairs {
  private Pairs() {}

  static List<ProposedPair> of(List<Profile> profiles) {
    List<ProposedPair> pairs = new ArrayList<>();
    new Blocks(profiles)
        .forEachPair(
            (first, second) ->
                pair(profiles.get(first), profiles.get(second)).ifPresent(pairs::add));
    return List.copyOf(pairs);
  }

  /** What is proposed of two references; empty if nothing is. */
  static Optional<ProposedPair> pair(Profile one, Profile two) {
    if (one.key().file().equals(RecordKey.BASE) && two.key().file().equals(RecordKey.BASE)) {
      return Optional.empty();
    }
    if (!Comparison.isWorthwhile(one, two)) {
      return Optional.empty();
    }
    Comparison both = Comparison.of(one, two);
    boolean otherNature = one.nature() != two.nature() && !isOneInOneIssue(one, two, both);
    Optional<Verdict> copies = otherNature ? Optional.empty() : Judge.of(one, two, both);
    if (copies.filter(verdict -> verdict == Verdict.SAME).isPresent()) {
      return Optional.of(proposal(one, two, Verdict.SAME, both, List.of()));
    }
    Optional<String> relation = Relations.between(one, two, both);
    if (relation.isPresent()) {
      return Optional.of(proposal(one, two, Verdict.RELATED, both, List.of(relation.get())));
    }
    if (otherNature && both.sharesNumber()) {
      return Optional.of(proposal(one, two, Verdict.POSSIBLE, both, List.of()));
    }
    return copies.map(verdict -> proposal(one, two, verdict, both, List.of()));
  }

  /**
   * Databases name kinds differently: what stands at one page of one volume of one journal is one
   * thing, unless one record is a notice.
   */
  private static boolean isOneInOneIssue(Profile one, Profile two, Comparison both) {
    return !one.nature().isNotice()
        && !two.nature().isNotice()
        && both.isSamePlace()
        && both.journal() == Comparison.Agreement.SAME
        && both.volume() == Comparison.Agreement.SAME;
  }

  private static ProposedPair proposal(
      Profile one, Profile two, Verdict verdict, Comparison both, List<String> first) {
    List<String> reasons = new ArrayList<>(first);
    reasons.addAll(Reasons.of(one, two, both));
    return new ProposedPair(one.key(), two.key(), verdict, reasons);
  }
}
