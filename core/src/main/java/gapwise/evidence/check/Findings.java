package gapwise.evidence.check;

import java.util.ArrayList;
import java.util.List;

/** The list that rules add to. Not thread-safe. */
final class Findings {
  private final List<Finding> found = new ArrayList<>();

  void impossible(Part part, String code, String message) {
    found.add(new Finding(Severity.IMPOSSIBLE, code, part, message));
  }

  void doubtful(Part part, String code, String message) {
    found.add(new Finding(Severity.DOUBTFUL, code, part, message));
  }

  List<Finding> list() {
    return List.copyOf(found);
  }
}
