package gapwise.selection;

import java.util.Objects;

/**
 * An arm, or one report of it, that a question could have taken and did not.
 *
 * @param studyId the study
 * @param armId the arm
 * @param label what lists call it
 * @param code kebab-case reason that stays stable, such as {@code different-clock}
 * @param message the reason in a sentence for people
 */
public record LeftOut(String studyId, String armId, String label, String code, String message) {
  public LeftOut {
    Objects.requireNonNull(studyId, "studyId");
    Objects.requireNonNull(armId, "armId");
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(message, "message");
  }
}
