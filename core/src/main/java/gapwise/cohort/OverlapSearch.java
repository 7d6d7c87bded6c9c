package gapwise.cohort;

import gapwise.evidence.Study;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * The door of this room. Takes studies one at a time, keeps of each what is compared, and proposes
 * pairs that a person should look at. Pairs that a record states already are not proposed. Not
 * thread-safe.
 */
public final class OverlapSearch {
  private static final Comparator<Proposal> ORDER =
      Comparator.comparing(Proposal::verdict)
          .thenComparing(Proposal::strength)
          .thenComparing(Proposal::first)
          .thenComparing(Proposal::second);

  private final List<StudyFacts> studies = new ArrayList<>();
  private final Set<Integer> judged = new HashSet<>();

  /**
   * What was found.
   *
   * @param proposals same papers first, the strongest first among each
   * @param tooCommon signs that so many studies share that nobody was compared by them alone
   */
  public record Overlaps(List<Proposal> proposals, int tooCommon) {
    public Overlaps {
      proposals = List.copyOf(proposals);
    }
  }

  /** Adds a study that is held against all others. */
  public void add(Study study) {
    judged.add(studies.size());
    studies.add(StudyFacts.of(study));
  }

  /** Adds a study that others are held against, and not those like it. */
  public void addKnown(Study study) {
    studies.add(StudyFacts.of(study));
  }

  /** What should be looked at. */
  public Overlaps find() {
    List<Proposal> proposals = new ArrayList<>();
    Candidates candidates = new Candidates(studies.stream().map(Keys::of).toList());
    candidates
        .pairs(
            pair ->
                judged.contains(Candidates.first(pair)) || judged.contains(Candidates.second(pair)))
        .forEach(
            pair ->
                proposal(studies.get(Candidates.first(pair)), studies.get(Candidates.second(pair)))
                    .ifPresent(proposals::add));
    for (int at : judged) {
      proposals.addAll(parts(studies.get(at)));
    }
    proposals.sort(ORDER);
    return new Overlaps(proposals, candidates.tooCommon());
  }

  /** The same without what persons settled already; see {@link CohortLinks#leftToAsk}. */
  public Overlaps find(Collection<CohortDecision> decisions) {
    Overlaps all = find();
    CohortLinks links = CohortLinks.of(decisions);
    return new Overlaps(
        all.proposals().stream()
            .flatMap(one -> links.leftToAsk(one).stream())
            .sorted(ORDER)
            .toList(),
        all.tooCommon());
  }

  /**
   * Tells which known studies can matter beside new ones; leaving all others away changes nothing.
   */
  public static Predicate<Study> near(Collection<Study> fresh) {
    List<Keys> keys = fresh.stream().map(study -> Keys.of(StudyFacts.of(study))).toList();
    Set<Long> sought = new HashSet<>();
    keys.forEach(key -> sought.addAll(key.sought()));
    List<Keys> withRows = keys.stream().filter(key -> !key.rows().isEmpty()).toList();
    return known -> {
      Keys own = Keys.of(StudyFacts.of(known));
      return own.own().stream().anyMatch(sought::contains)
          || !own.rows().isEmpty() && withRows.stream().anyMatch(key -> key.meet(own));
    };
  }

  private static Optional<Proposal> proposal(StudyFacts one, StudyFacts two) {
    if (one.id().equals(two.id()) || one.isLinkedTo(two)) {
      return Optional.empty();
    }
    boolean inOrder = one.id().compareTo(two.id()) < 0;
    StudyFacts first = inOrder ? one : two;
    StudyFacts second = inOrder ? two : one;
    Circumstances circumstances = new Circumstances(first, second);
    Optional<Found> printed = PrintedTwice.judge(first, second, circumstances);
    Optional<Found> patients = SharedPatients.judge(first, second, circumstances);
    return worse(printed, patients)
        .map(
            found ->
                new Proposal(
                    Member.of(first.id()),
                    Member.of(second.id()),
                    found.verdict(),
                    found.strength(),
                    found.with(circumstances.signs()).signs(),
                    Fingerprint.ofPair(first, second)));
  }

  private static Optional<Found> worse(Optional<Found> one, Optional<Found> two) {
    if (one.isEmpty() || two.isEmpty()) {
      return one.or(() -> two);
    }
    boolean second = two.get().verdict().compareTo(one.get().verdict()) < 0;
    Found worse = second ? two.get() : one.get();
    return Optional.of(worse.with((second ? one.get() : two.get()).signs()));
  }

  private static List<Proposal> parts(StudyFacts study) {
    List<Proposal> proposals = new ArrayList<>();
    for (PartBeside.Pair pair : PartBeside.in(study)) {
      Member part = new Member(study.id(), Optional.of(pair.part().arm()));
      Member whole = new Member(study.id(), Optional.of(pair.whole().arm()));
      boolean inOrder = part.compareTo(whole) < 0;
      proposals.add(
          new Proposal(
              inOrder ? part : whole,
              inOrder ? whole : part,
              pair.found().verdict(),
              pair.found().strength(),
              pair.found().signs(),
              study.stoodOn()));
    }
    return proposals;
  }
}
