package gapwise.decision.certainty;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * How certain a number is: as a person settled it, while the records under it are those that were
 * judged; else as proposed.
 *
 * @param proposed from the numbers
 * @param settled by a person, whether it still holds or not; empty where nobody did
 * @param data the studies under the number now with their versions
 */
public record Certainty(Rating proposed, Optional<Settled> settled, List<String> data) {
  public Certainty {
    Objects.requireNonNull(proposed, "proposed");
    Objects.requireNonNull(settled, "settled");
    data = List.copyOf(data);
  }

  /** Whether a person settled it, of records that have changed since. */
  public boolean isOutdated() {
    return settled.filter(one -> !one.judgement().data().equals(data)).isPresent();
  }

  /** Whether a person settled it, and it still holds. */
  public boolean isSettled() {
    return settled.isPresent() && !isOutdated();
  }

  /** The rating that counts. */
  public Rating rating() {
    return isSettled() ? settled.orElseThrow().judgement().of(proposed) : proposed;
  }
}
