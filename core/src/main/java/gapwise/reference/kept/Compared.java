package gapwise.reference.kept;

import gapwise.evidence.Citation;
import gapwise.reference.pair.Citations;
import gapwise.reference.pair.FiledReference;
import gapwise.reference.pair.ProposedPair;
import gapwise.reference.pair.RecordKey;
import gapwise.reference.pair.ReferenceProposals;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All kept references compared with one another and with the studies of the base: what is proposed
 * of them, whatever was settled. The work grows with the number of records and not with its square.
 */
public final class Compared {
  private final Map<RecordKey, FiledReference> filed;
  private final Map<String, String> stoodOn;
  private final List<ProposedPair> pairs;

  private Compared(
      Map<RecordKey, FiledReference> filed, Map<String, String> stoodOn, List<ProposedPair> pairs) {
    this.filed = filed;
    this.stoodOn = stoodOn;
    this.pairs = pairs;
  }

  /**
   * Compares them.
   *
   * @param lines the kept references
   * @param studies citations of the base by the id of their study
   */
  public static Compared of(Collection<KeptLine> lines, Map<String, Citation> studies) {
    List<FiledReference> all = new ArrayList<>();
    Map<String, String> stoodOn = new HashMap<>();
    if (!lines.isEmpty()) {
      studies.forEach(
          (id, citation) -> {
            FiledReference study = Citations.filed(id, citation, all.size() + 1);
            stoodOn.put(Member.ofStudy(id), Fingerprint.of(study.reference()));
            all.add(study);
          });
    }
    for (KeptLine line : lines) {
      stoodOn.put(line.id(), line.stoodOn());
      all.add(line.filed());
    }
    List<ProposedPair> pairs = ReferenceProposals.among(all);
    Map<RecordKey, FiledReference> filed = new HashMap<>();
    all.forEach(one -> filed.put(one.key(), one));
    return new Compared(filed, stoodOn, pairs);
  }

  /** What is proposed. */
  List<ProposedPair> pairs() {
    return pairs;
  }

  /** The record of a key that was compared. */
  Optional<FiledReference> filed(RecordKey key) {
    return Optional.ofNullable(filed.get(key));
  }

  Collection<FiledReference> all() {
    return filed.values();
  }

  /** A hash of what two members say now; empty where one of them is not there. */
  public Optional<String> stoodOn(String one, String other) {
    String first = stoodOn.get(one);
    String second = stoodOn.get(other);
    return first == null || second == null
        ? Optional.empty()
        : Optional.of(Fingerprint.ofPair(one, first, other, second));
  }
}
