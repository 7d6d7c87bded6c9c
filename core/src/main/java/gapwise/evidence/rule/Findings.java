package gapwise.evidence.rule;

import java.util.ArrayList;
import java.util.List;

/** The list that rules add to. Not thread-safe. */
public final class Findings {
  private final List<Finding> found = new ArrayList<>();

  public void impossible(RecordPart part, String code, String message) {
    found.add(new Finding(Severity.IMPOSSIBLE, code, part, message));
  }

  public void doubtful(RecordPart part, String code, String message) {
    found.add(new Finding(Severity.DOUBTFUL, code, part, message));
  }

  public List<Finding> list() {
    return List.copyOf(found);
  }
}
