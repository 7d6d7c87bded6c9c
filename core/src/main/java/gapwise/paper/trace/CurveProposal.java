package gapwise.paper.trace;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A curve found in a drawing; a person confirms its name and that it is one of shares.
 *
 * @param label the group's name as printed, empty if none could be told
 * @param steps as read off
 * @param seenLast times at which strokes mark patients last seen
 * @param atRisk numbers at risk of this group, if printed
 * @param questions what a person must settle; whole sentences
 */
public record CurveProposal(
    String label,
    Steps steps,
    List<Double> seenLast,
    Optional<AtRiskRow> atRisk,
    List<String> questions) {
  public CurveProposal {
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(steps, "steps");
    seenLast = List.copyOf(seenLast);
    questions = List.copyOf(questions);
  }
}
