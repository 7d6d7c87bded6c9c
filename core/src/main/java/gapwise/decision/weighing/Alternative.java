package gapwise.decision.weighing;

/**
 * A way of treatment that is weighed.
 *
 * @param code unique among the alternatives of a weighing
 * @param label for people
 */
public record Alternative(String code, String label) {
  public Alternative {
    if (code.isBlank() || label.isBlank()) {
      throw new IllegalArgumentException("an alternative needs a code and a label");
    }
  }
}
