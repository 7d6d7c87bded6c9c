package gapwise.demonstration;

import java.util.Map;

/**
 * What really happens to limbs treated by one method in the invented country. All values are
 * invented; they were set so that arms look as published series do, and copy none of them.
 *
 * <p>The chance of union after the index procedure follows a logistic law: logit of the chance at 6
 * cm without infection, plus the slope times (length - 6 cm), plus a shift if infected, plus a
 * deviation of the study that is normal with {@code betweenStudies} as standard deviation. Where
 * nothing is meant to join (amputation, a spacer left for good) it is the chance that the stump or
 * the spacer needs no further operation; no union is reported then.
 *
 * @param primaryUnionAtSixCentimetres chance, 0 to 1, without infection
 * @param slopePerCentimetre change of the logit for each further centimetre
 * @param infectedShift change of the logit when infected at the start
 * @param betweenStudies standard deviation of the logit between studies
 * @param recurrence chance that an infected limb is ever infected again
 * @param newInfection chance that a clean limb is ever infected
 * @param refracture chance
 * @param monthsAtNoLength months from the definitive operation to union, less the part by length
 * @param monthsPerCentimetre further months for each centimetre; for frames also months in it
 * @param complications mean number in a patient
 * @param donorTrouble chance of trouble where bone was taken
 * @param partialWeightMonths months from the definitive operation to partial weight
 * @param fullInSupportShare full weight in a support, as share of the time to union
 * @param unsupportedExtraMonths months from union, or from frame removal, to walking unsupported
 */
record Truth(
    double primaryUnionAtSixCentimetres,
    double slopePerCentimetre,
    double infectedShift,
    double betweenStudies,
    double recurrence,
    double newInfection,
    double refracture,
    double monthsAtNoLength,
    double monthsPerCentimetre,
    double complications,
    double donorTrouble,
    double partialWeightMonths,
    double fullInSupportShare,
    double unsupportedExtraMonths) {

  /** Chance that a limb that failed at first joins after further operations. */
  static final double RESCUED = 0.86;

  /** Chance that a limb that never joins is removed. */
  static final double REMOVED_IF_NEVER_JOINED = 0.35;

  /** Chance that a limb with a late deep infection is removed. */
  static final double REMOVED_IF_INFECTED = 0.12;

  /** Chance of an infection between the first stage and the second. */
  static final double INFECTED_BETWEEN_STAGES = 0.12;

  /** Mean months from the definitive operation to a deep infection, so short series miss many. */
  static final double MONTHS_TO_INFECTION = 15;

  private static final Map<String, Truth> BY_METHOD =
      Map.ofEntries(
          Map.entry(
              "bone-transport",
              new Truth(.93, -.10, -.35, .70, .10, .05, .06, 0.5, 1.42, 1.5, .00, 1.0, .65, 1.4)),
          Map.entry(
              "internal-bone-transport",
              new Truth(.92, -.09, -.40, .70, .09, .06, .05, 0.5, 1.35, 1.5, .00, 0.8, .50, 1.2)),
          Map.entry(
              "acute-shortening-lengthening",
              new Truth(.94, -.12, -.30, .60, .09, .05, .05, 0.8, 1.35, 1.1, .00, 0.8, .60, 1.2)),
          Map.entry(
              "frame-without-transport",
              new Truth(.90, -.22, -.30, .60, .11, .05, .05, 4.5, 0.65, 0.9, .00, 0.7, .60, 1.2)),
          Map.entry(
              "induced-membrane",
              new Truth(.92, -.12, -.60, .75, .19, .05, .04, 4.6, 0.34, 0.8, .14, 2.2, .70, 1.2)),
          Map.entry(
              "vascularised-bone-flap",
              new Truth(.91, -.05, -.30, .70, .10, .05, .20, 4.4, 0.27, 0.9, .18, 3.0, .90, 2.5)),
          Map.entry(
              "autograft",
              new Truth(.87, -.28, -.70, .70, .17, .05, .04, 3.2, 0.50, 0.5, .18, 2.3, .75, 1.2)),
          Map.entry(
              "allograft",
              new Truth(.84, -.15, -.90, .70, .24, .08, .10, 5.0, 0.50, 0.7, .00, 3.0, .80, 1.5)),
          Map.entry(
              "printed-scaffold",
              new Truth(.92, -.06, -.70, .70, .22, .07, .02, 4.8, 0.20, 0.6, .06, 0.9, .45, 0.6)),
          Map.entry(
              "metal-cage",
              new Truth(.88, -.10, -.60, .70, .18, .06, .03, 5.0, 0.40, 0.7, .08, 1.5, .60, 1.0)),
          Map.entry(
              "arthrodesis",
              new Truth(.86, -.08, -.50, .60, .15, .06, .03, 5.0, 0.35, 0.8, .08, 1.5, .70, 1.2)),
          Map.entry(
              "combined",
              new Truth(.92, -.08, -.40, .70, .13, .05, .06, 3.5, 0.80, 1.2, .10, 1.8, .70, 1.5)),
          Map.entry(
              "mixed-salvage",
              new Truth(.88, -.12, -.45, .70, .15, .06, .06, 4.5, 0.70, 1.2, .08, 2.2, .75, 1.5)),
          Map.entry(
              "other",
              new Truth(.80, -.05, -.40, .30, .20, .08, .00, 9.0, 0.30, 0.8, .00, 1.0, .40, 1.0)),
          Map.entry(
              "primary-amputation",
              new Truth(.88, 0, 0, 0, .10, .07, .00, 3.0, 0.00, 0.6, .00, 1.6, .90, 1.8)),
          Map.entry(
              "amputation",
              new Truth(.86, 0, 0, 0, .11, .08, .00, 3.0, 0.00, 0.65, .00, 1.7, .90, 2.0)),
          Map.entry(
              "secondary-amputation",
              new Truth(.84, 0, 0, 0, .12, .08, .00, 3.0, 0.00, 0.7, .00, 1.8, .90, 2.2)));

  /** The truth of a method of the vocabulary. */
  static Truth of(String method) {
    Truth truth = BY_METHOD.get(method);
    if (truth == null) {
      throw new IllegalArgumentException("the scenario has no truth for the method " + method);
    }
    return truth;
  }

  /**
   * Chance of union after the index procedure.
   *
   * @param lengthCentimetres missing length
   * @param infected at the start
   * @param studyDeviation of this study, on the logit scale
   */
  double primaryUnion(double lengthCentimetres, boolean infected, double studyDeviation) {
    double p = primaryUnionAtSixCentimetres;
    double logit =
        StrictMath.log(p / (1 - p))
            + slopePerCentimetre * (lengthCentimetres - 6)
            + (infected ? infectedShift : 0)
            + studyDeviation;
    return 1 / (1 + StrictMath.exp(-logit));
  }
}
