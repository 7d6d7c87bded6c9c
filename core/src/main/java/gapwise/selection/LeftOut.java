package gapwise.selection;

import java.util.Objects;

/**
 * An arm, or one report of it, that a question could have taken and did not.
 *
 * @param studyId the study
 * @param armId the arm
 * @param label what lists call it
 * @param reason why
 */
public record LeftOut(String studyId, String armId, String label, Reason reason) {
  public LeftOut {
    Objects.requireNonNull(studyId, "studyId");
    Objects.requireNonNull(armId, "armId");
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(reason, "reason");
  }

  /** Kebab-case reason that stays stable, such as {@code different-clock}. */
  public String code() {
    return reason.code();
  }

  /** The reason in a sentence for people. */
  public String message() {
    return reason.sentence();
  }
}
