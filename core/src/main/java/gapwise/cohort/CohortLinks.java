package gapwise.cohort;

import gapwise.cohort.CohortDecision.Settled;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What follows from all decisions of persons, the last one about each pair: who shares patients
 * with whom, who may, and who is counted. Decisions add to what the records say of each other
 * themselves and take nothing from it.
 */
public final class CohortLinks {
  /** No decision was made. */
  public static final CohortLinks NONE = of(List.of());

  private final SortedMap<String, CohortDecision> latest;

  private CohortLinks(SortedMap<String, CohortDecision> latest) {
    this.latest = latest;
  }

  /** What follows from these; of several about one pair the last counts. */
  public static CohortLinks of(Collection<CohortDecision> decisions) {
    SortedMap<String, CohortDecision> latest = new TreeMap<>();
    decisions.stream()
        .sorted(Comparator.comparing(CohortDecision::when))
        .forEach(decision -> latest.put(decision.key(), decision));
    return new CohortLinks(latest);
  }

  /** Whether there are none. */
  public boolean isEmpty() {
    return latest.isEmpty();
  }

  /** The last decision about each pair, by its key. */
  public Map<String, CohortDecision> decisions() {
    return Map.copyOf(latest);
  }

  /**
   * What is left to ask of a proposal: nothing of two that a person linked, nothing of two that a
   * person held apart as long as both records stand as they stood then, and the same as a mere
   * possibility where a person could not tell.
   */
  public Optional<Proposal> leftToAsk(Proposal proposal) {
    CohortDecision decision = latest.get(proposal.key());
    if (decision == null) {
      return Optional.of(proposal);
    }
    boolean asItStood = decision.stoodOn().equals(proposal.stoodOn());
    return switch (decision.settled()) {
      case SAME, OVERLAPPING -> Optional.empty();
      case SEPARATE -> asItStood ? Optional.empty() : Optional.of(proposal);
      case NOT_KNOWN -> Optional.of(asItStood ? proposal.asPossible() : proposal);
    };
  }

  /**
   * Two that share patients.
   *
   * @param counted the one that is counted for the outcome asked for; empty where the usual rule
   *     chooses
   */
  public record Link(Member one, Member two, Optional<Member> counted) {}

  /**
   * Pairs of which only one may be counted.
   *
   * @param outcome code of the outcome that is counted
   */
  public List<Link> counted(String outcome) {
    List<Link> links = new ArrayList<>();
    for (CohortDecision decision : latest.values()) {
      if (decision.settled() == Settled.SAME || decision.settled() == Settled.OVERLAPPING) {
        Optional<String> named =
            decision.counted().or(() -> Optional.ofNullable(decision.suppliers().get(outcome)));
        links.add(link(decision, named.map(Member::parse)));
      }
    }
    return links;
  }

  /** Pairs that may share patients, and nobody could tell. */
  public List<Link> suspected() {
    return latest.values().stream()
        .filter(decision -> decision.settled() == Settled.NOT_KNOWN)
        .map(decision -> link(decision, Optional.empty()))
        .toList();
  }

  /** The studies that may share patients with a study, as nobody could tell. */
  public Set<String> suspectedWith(String study) {
    Set<String> others = new TreeSet<>();
    for (Link link : suspected()) {
      if (link.one().study().equals(study)) {
        others.add(link.two().study());
      } else if (link.two().study().equals(study)) {
        others.add(link.one().study());
      }
    }
    others.remove(study);
    return others;
  }

  private static Link link(CohortDecision decision, Optional<Member> counted) {
    return new Link(Member.parse(decision.first()), Member.parse(decision.second()), counted);
  }
}
