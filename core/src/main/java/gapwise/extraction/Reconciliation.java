package gapwise.extraction;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What two people extracted of one paper, what differs, and what was settled of it so far.
 *
 * @param paper who reads it, and how far it is
 * @param first what the first extracted
 * @param second what the second extracted
 * @param compared both side by side
 * @param choices what was settled, by the key of the difference, of differences that there are
 */
public record Reconciliation(
    TwiceRead paper,
    Extraction first,
    Extraction second,
    Compared compared,
    Map<String, FieldChoice> choices) {
  public Reconciliation {
    Objects.requireNonNull(paper, "paper");
    if (!paper.isOpenToAll()) {
      throw new IllegalArgumentException(
          "nobody sees both extractions of " + paper.study() + " before they are settled");
    }
    choices = Map.copyOf(choices);
  }

  /**
   * Puts it together.
   *
   * @param settled everything that was settled of the paper
   * @param said what was said of rows
   */
  public static Reconciliation of(
      TwiceRead paper,
      Extraction first,
      Extraction second,
      Collection<FieldChoice> settled,
      Collection<SameRow> said) {
    Compared compared = Compared.of(first, second, said);
    Map<String, FieldChoice> choices = new LinkedHashMap<>();
    for (FieldChoice choice : settled) {
      // A choice of two rows that were put together otherwise since is about nothing any more.
      compared
          .difference(choice.difference())
          .filter(one -> one.first().text().equals(choice.first()))
          .filter(one -> one.second().text().equals(choice.second()))
          .ifPresent(one -> choices.put(one.key(), choice));
    }
    return new Reconciliation(paper, first, second, compared, choices);
  }

  /** What was settled of a difference. */
  public Optional<FieldChoice> choice(Difference one) {
    return Optional.ofNullable(choices.get(one.key()));
  }

  /** The differences that nobody settled yet. */
  public List<Difference> open() {
    return AgreedRows.open(compared, choices);
  }

  /** The rows of the agreed record as far as it is settled. */
  public List<ReadRow> agreed() {
    return AgreedRows.of(compared, choices, false);
  }

  /** Both extractions. */
  public List<Extraction> both() {
    return List.of(first, second);
  }

  /** Whether the person who settles is one of the two who read it. */
  public boolean isSettledByOneOfBoth() {
    return paper.settling().flatMap(one -> paper.side(one.who())).isPresent();
  }
}
