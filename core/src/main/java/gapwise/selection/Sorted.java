package gapwise.selection;

import java.util.Optional;

/**
 * An arm with what its paper reports of the outcome.
 *
 * @param arm the arm
 * @param reports of the outcome asked for
 * @param otherSide of its other side, turned round; empty if it has none
 */
record Sorted(ArmCase arm, ArmReports reports, Optional<ArmReports> otherSide) {
  static Sorted of(Question question, ArmCase arm) {
    return new Sorted(arm, ArmReports.of(question, arm), ArmReports.ofOtherSide(question, arm));
  }

  /** The row of the arm: from its own reports, else from those of the other side. */
  Optional<SelectedRow> choose(ArmChoice choice) {
    return choice.choose(reports).or(() -> otherSide.flatMap(choice::choose));
  }
}
