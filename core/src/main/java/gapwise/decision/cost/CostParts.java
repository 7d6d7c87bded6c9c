package gapwise.decision.cost;

/**
 * What a patient costs on average, discounted, by what it is for.
 *
 * @param treatment planned operations
 * @param months months in treatment
 * @param reoperations unplanned operations
 * @param infections infections
 * @param amputations amputations after a reconstruction failed
 * @param prostheses first prostheses and all renewals
 * @param notHealed months not healed after treatment
 * @param lostWork work lost
 */
public record CostParts(
    double treatment,
    double months,
    double reoperations,
    double infections,
    double amputations,
    double prostheses,
    double notHealed,
    double lostWork) {
  static final CostParts NONE = new CostParts(0, 0, 0, 0, 0, 0, 0, 0);

  /** All together. */
  public double total() {
    return treatment
        + months
        + reoperations
        + infections
        + amputations
        + prostheses
        + notHealed
        + lostWork;
  }

  /** This with a part of another. */
  CostParts plus(CostParts other, double share) {
    return new CostParts(
        treatment + share * other.treatment,
        months + share * other.months,
        reoperations + share * other.reoperations,
        infections + share * other.infections,
        amputations + share * other.amputations,
        prostheses + share * other.prostheses,
        notHealed + share * other.notHealed,
        lostWork + share * other.lostWork);
  }
}
