package gapwise.reference.kept;

import gapwise.reference.likeness.Letters;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** All kept references in brief, by title, with what was settled of them. It never changes. */
public final class Shelf {
  private final Map<String, KeptLine> byId;
  private final List<KeptLine> inOrder;
  private final List<ReferenceDecision> decisions;
  private final ReferenceGroups groups;

  private Shelf(
      Map<String, KeptLine> byId, List<KeptLine> inOrder, List<ReferenceDecision> decisions) {
    this.byId = byId;
    this.inOrder = inOrder;
    this.decisions = decisions;
    Map<String, Integer> complete = new HashMap<>();
    byId.forEach((id, line) -> complete.put(id, line.complete()));
    this.groups = ReferenceGroups.of(decisions, complete);
  }

  /** The shelf of these. */
  public static Shelf of(Collection<KeptLine> lines, Collection<ReferenceDecision> decisions) {
    Map<String, KeptLine> byId = new HashMap<>();
    lines.forEach(line -> byId.put(line.id(), line));
    List<KeptLine> inOrder =
        byId.values().stream()
            .sorted(Comparator.comparing(KeptLine::words).thenComparing(KeptLine::id))
            .toList();
    return new Shelf(byId, inOrder, List.copyOf(decisions));
  }

  /** The same references with other decisions. */
  public Shelf withDecisions(Collection<ReferenceDecision> others) {
    return new Shelf(byId, inOrder, List.copyOf(others));
  }

  /** All of them, by title. */
  public List<KeptLine> lines() {
    return inOrder;
  }

  /** One of them. */
  public Optional<KeptLine> line(String id) {
    return Optional.ofNullable(byId.get(id));
  }

  /** What persons settled, the last decision about each pair. */
  public List<ReferenceDecision> decisions() {
    return decisions;
  }

  /** Which of them are one paper. */
  public ReferenceGroups groups() {
    return groups;
  }

  /** How many papers they are, records of one paper counted once. */
  public int papers() {
    return (int) byId.keySet().stream().filter(id -> groups.leading(id).equals(id)).count();
  }

  /**
   * Those whose title, authors, year or journal hold every word that was typed, or its start; all
   * where nothing was typed, none where nothing of it is a letter or a digit.
   */
  public List<KeptLine> search(String typed) {
    String plain = Letters.folded(typed);
    if (plain.isEmpty() && !typed.isBlank()) {
      return List.of();
    }
    String[] words = plain.split(" ");
    return inOrder.stream().filter(line -> holds(" " + line.words(), words)).toList();
  }

  private static boolean holds(String text, String[] words) {
    for (String word : words) {
      if (!word.isEmpty() && !text.contains(" " + word)) {
        return false;
      }
    }
    return true;
  }
}
