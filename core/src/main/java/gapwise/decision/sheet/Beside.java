package gapwise.decision.sheet;

import gapwise.decision.choice.CostedTable;
import gapwise.decision.choice.WeighedTable;
import gapwise.decision.option.PairApart;
import gapwise.decision.option.PairWithin;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What the page for the team tells beside the table.
 *
 * @param within methods compared within studies
 * @param apart separate groups against a difference that matters
 * @param weighed the table weighed by wishes; empty where nobody asked for it
 * @param costed the table reckoned in costs; empty where nobody asked for it
 */
public record Beside(
    List<PairWithin> within,
    List<PairApart> apart,
    Optional<WeighedTable> weighed,
    Optional<CostedTable> costed) {
  public Beside {
    within = List.copyOf(within);
    apart = List.copyOf(apart);
    Objects.requireNonNull(weighed, "weighed");
    Objects.requireNonNull(costed, "costed");
  }

  /** Nothing, where only the numbers of two sheets are held against each other. */
  static Beside nothing() {
    return new Beside(List.of(), List.of(), Optional.empty(), Optional.empty());
  }
}
