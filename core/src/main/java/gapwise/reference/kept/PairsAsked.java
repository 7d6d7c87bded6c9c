package gapwise.reference.kept;

import gapwise.reference.kept.ReferenceDecision.Settled;
import gapwise.reference.pair.FiledReference;
import gapwise.reference.pair.ProposedPair;
import gapwise.reference.pair.RecordKey;
import gapwise.reference.pair.ReferenceProposals;
import gapwise.reference.pair.Standing;
import gapwise.reference.pair.Verdict;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What is left to ask of what was compared, once the decisions of persons are held against it. A
 * pair that was settled is asked again only when one of its records says something else; one of
 * which other decisions leave no doubt is not asked either.
 */
public final class PairsAsked {
  private final Compared compared;
  private final Map<String, ReferenceDecision> decisions;
  private final ReferenceGroups groups;

  private PairsAsked(
      Compared compared, Map<String, ReferenceDecision> decisions, ReferenceGroups groups) {
    this.compared = compared;
    this.decisions = decisions;
    this.groups = groups;
  }

  /**
   * Holds decisions against what was compared.
   *
   * @param decisions the last one about each pair
   * @param groups what follows from them
   */
  public static PairsAsked of(
      Compared compared, Collection<ReferenceDecision> decisions, ReferenceGroups groups) {
    Map<String, ReferenceDecision> byKey = new HashMap<>();
    decisions.forEach(one -> byKey.put(one.key(), one));
    return new PairsAsked(compared, Map.copyOf(byKey), groups);
  }

  /** The pairs that are open, the surest proposals first. */
  public List<OpenPair> open() {
    Set<String> apart = heldApart();
    List<OpenPair> open = new ArrayList<>();
    for (ProposedPair pair : compared.pairs()) {
      String one = Member.of(pair.first());
      String other = Member.of(pair.second());
      Optional<ReferenceDecision> decision = decision(one, other);
      boolean follows = groups.areOne(one, other) || apart.contains(apart(one, other));
      if (decision.isPresent() ? !stands(decision.get()) : !follows) {
        boolean inOrder = one.compareTo(other) < 0;
        open.add(
            new OpenPair(
                inOrder ? one : other,
                inOrder ? other : one,
                pair.verdict(),
                pair.reasons(),
                compared.stoodOn(one, other).orElseThrow(),
                decision));
      }
    }
    open.sort(Comparator.comparing(OpenPair::verdict).thenComparing(OpenPair::key));
    return List.copyOf(open);
  }

  private Optional<ReferenceDecision> decision(String one, String other) {
    return Optional.ofNullable(decisions.get(Member.key(one, other)));
  }

  /** Whether both records say what they said when it was settled. */
  private boolean stands(ReferenceDecision decision) {
    return compared
        .stoodOn(decision.first(), decision.second())
        .filter(decision.stoodOn()::equals)
        .isPresent();
  }

  /** Papers that a person held apart by any of their records. */
  private Set<String> heldApart() {
    Set<String> apart = new HashSet<>();
    for (ReferenceDecision decision : decisions.values()) {
      if (decision.settled() != Settled.SAME && stands(decision)) {
        apart.add(apart(decision.first(), decision.second()));
      }
    }
    return apart;
  }

  private String apart(String one, String other) {
    String first = groups.root(one);
    String second = groups.root(other);
    return first.equals(second) ? first : Member.key(first, second);
  }

  /**
   * What the records say became of papers, by member: retracted, corrected, under concern. What a
   * person settled counts before what is proposed: a notice that was held apart from a paper says
   * nothing of it, and a paper says nothing of what was held to be another.
   */
  public Map<String, List<Standing>> standings() {
    List<ProposedPair> pairs = new ArrayList<>();
    Set<RecordKey> keys = new LinkedHashSet<>();
    for (ProposedPair pair : compared.pairs()) {
      settled(pair)
          .ifPresent(
              kept -> {
                pairs.add(kept);
                keys.add(kept.first());
                keys.add(kept.second());
              });
    }
    for (FiledReference one : compared.all()) {
      if (!one.reference().links().isEmpty() || !one.reference().kindsPrinted().isEmpty()) {
        keys.add(one.key());
      }
    }
    List<FiledReference> told = keys.stream().flatMap(key -> compared.filed(key).stream()).toList();
    Map<String, List<Standing>> standings = new HashMap<>();
    for (Standing standing : ReferenceProposals.standings(told, pairs)) {
      standings
          .computeIfAbsent(Member.of(standing.paper()), none -> new ArrayList<>())
          .add(standing);
    }
    return standings;
  }

  private Optional<ProposedPair> settled(ProposedPair pair) {
    Optional<ReferenceDecision> decision =
        decision(Member.of(pair.first()), Member.of(pair.second()));
    if (decision.isEmpty()) {
      return Optional.of(pair);
    }
    return switch (decision.get().settled()) {
      case SAME -> Optional.of(as(pair, Verdict.SAME));
      case RELATED -> Optional.of(as(pair, Verdict.RELATED));
      case DIFFERENT -> Optional.empty();
    };
  }

  private static ProposedPair as(ProposedPair pair, Verdict verdict) {
    return new ProposedPair(pair.first(), pair.second(), verdict, pair.reasons());
  }
}
