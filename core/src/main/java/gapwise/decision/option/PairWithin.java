package gapwise.decision.option;

import gapwise.claim.Claim;
import gapwise.claim.Compared;
import gapwise.claim.Part;
import gapwise.decision.certainty.Rating;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Estimate;
import java.util.Objects;
import java.util.Optional;

/**
 * Two methods compared within studies that hold both.
 *
 * @param column the outcome
 * @param first the method that stands first in the vocabulary
 * @param second the other
 * @param studies that hold both and report the outcome
 * @param claim the comparison as a claim, under which its plan and every other analysis stand
 * @param part what these studies say; without numbers where nothing could be pooled
 * @param difference first less second, at what the second has by itself; empty where not known
 * @param rating how certain the difference is, as proposed; empty without one
 * @param chances of a difference that matters; empty where none is named or the model gives none
 */
public record PairWithin(
    Column column,
    Method first,
    Method second,
    int studies,
    Claim claim,
    Part part,
    Optional<Estimate> difference,
    Optional<Rating> rating,
    Optional<Chances> chances) {
  public PairWithin {
    Objects.requireNonNull(column, "column");
    Objects.requireNonNull(first, "first");
    Objects.requireNonNull(second, "second");
    Objects.requireNonNull(claim, "claim");
    Objects.requireNonNull(part, "part");
    Objects.requireNonNull(difference, "difference");
    Objects.requireNonNull(rating, "rating");
    Objects.requireNonNull(chances, "chances");
  }

  /** The numbers of the comparison. */
  public Optional<Compared> compared() {
    return part.compared();
  }
}
