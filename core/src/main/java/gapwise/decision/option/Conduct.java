package gapwise.decision.option;

import gapwise.appraisal.StudyRisk;
import gapwise.decision.certainty.SeriesSeen.Concern;
import gapwise.evidence.Baseline;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.selection.SelectedRow;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Doubt about how a series was conducted, from what its record says where nobody appraised it:
 * patients picked, more than a fifth lost, union read by those who operated (common practice, no
 * source).
 */
final class Conduct {
  private static final double MOST_LOST = 0.2;

  private Conduct() {}

  /**
   * As people judged the study with a published instrument; else from the record.
   *
   * @param outcome the result that it is about
   */
  static Concern of(SelectedRow row, Outcome outcome) {
    return switch (StudyRisk.of(row.study(), outcome)) {
      case LOW, SOME -> Concern.LOW;
      case SERIOUS -> Concern.SERIOUS;
      case CRITICAL -> Concern.CRITICAL;
      case NOT_RATED -> ofRecord(row);
    };
  }

  private static Concern ofRecord(SelectedRow row) {
    boolean picked = row.study().consecutive().equals(Optional.of(YesOrNo.NO));
    Optional<Double> lost = lost(row);
    boolean manyLost = lost.filter(share -> share > MOST_LOST).isPresent();
    boolean ownReading =
        isRead(row.report().map(report -> report.outcome()))
            && row.study().assessorIndependent().equals(Optional.of(YesOrNo.NO));
    if (picked || manyLost || ownReading) {
      return Concern.SERIOUS;
    }
    boolean all = row.study().consecutive().equals(Optional.of(YesOrNo.YES));
    return all && lost.isPresent() ? Concern.LOW : Concern.UNKNOWN;
  }

  private static boolean isRead(Optional<Outcome> outcome) {
    return outcome.filter(one -> one.family().equals("Union")).isPresent();
  }

  private static Optional<Double> lost(SelectedRow row) {
    Baseline own = row.arm().baseline();
    Baseline of = own.lostToFollowUp().isPresent() ? own : row.study().whole();
    OptionalInt patients = of.patients().isPresent() ? of.patients() : of.limbs();
    return of.lostToFollowUp().isPresent() && patients.isPresent()
        ? Optional.of((double) of.lostToFollowUp().getAsInt() / patients.getAsInt())
        : Optional.empty();
  }
}
