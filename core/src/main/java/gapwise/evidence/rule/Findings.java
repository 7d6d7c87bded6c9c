package gapwise.evidence.rule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/** The list that rules add to. Not thread-safe. */
public final class Findings {
  private final List<Finding> found = new ArrayList<>();

  public void impossible(RecordPart part, String code, String message) {
    found.add(new Finding(Severity.IMPOSSIBLE, code, part, message, Optional.empty()));
  }

  public void proposed(RecordPart part, String code, String message) {
    found.add(new Finding(Severity.PROPOSED, code, part, message, Optional.empty()));
  }

  public void doubtful(RecordPart part, String code, String message) {
    found.add(new Finding(Severity.DOUBTFUL, code, part, message, Optional.empty()));
  }

  /**
   * A doubt about two studies, which is the same whichever of them it is found at.
   *
   * @param other the study that the part does not name
   * @param shared what they have in common
   */
  public void doubtfulPair(
      RecordPart part, String code, String message, String other, String shared) {
    String pair = String.join("|", new TreeSet<>(List.of(part.study(), other))) + "|" + shared;
    found.add(new Finding(Severity.DOUBTFUL, code, part, message, Optional.of(pair)));
  }

  public List<Finding> list() {
    return List.copyOf(found);
  }
}
