package gapwise.demonstration;

import static gapwise.demonstration.Habit.*;
import static gapwise.demonstration.LengthStyle.*;
import static gapwise.demonstration.StudyPlan.caseReport;
import static gapwise.demonstration.StudyPlan.series;

import java.util.List;

/** Studies of one arm of the induced membrane. */
final class MembranePlans {
  static final String COAST_COHORT = "Coast membrane cohort (invented)";

  private MembranePlans() {}

  static List<StudyPlan> all() {
    return List.of(
        series(18, "two stages with a cement spacer", 2007, 2013, membrane(19, 5.6, MEAN_AND_RANGE))
            .patientsOf(18, COAST_COHORT)
            .with(PRIMARY_AND_FINAL, TWO_TIME_POINTS, WEIGHT_BEARING, SCORES),
        series(
                19,
                "two stages with a spacer, early results",
                2007,
                2011,
                membrane(19, 5.6, NOTHING))
            .patientsOf(18, COAST_COHORT)
            .abstractOf(18)
            .with(PRIMARY_ONLY),
        series(
                20,
                "infected gaps after the second stage",
                2010,
                2016,
                membrane(24, 6.2, MEDIAN_AND_RANGE).infected(1).followed(38).lost(2))
            .with(PRIMARY_AND_FINAL, TWO_TIME_POINTS, MEDIANS, COUNTS_PER_PATIENT),
        series(
                21,
                "a clean gap filled in two stages",
                2012,
                2017,
                membrane(12, 5.0, MILLIMETRES).infected(0).femurs(0.4))
            .with(NO_FURTHER_GRAFT, WEEKS, LIVING),
        series(
                22,
                "membrane and reamed graft over a nail",
                2014,
                2019,
                membrane(14, 6.5, MEDIAN_AND_QUARTILES)
                    .parts("induced membrane, reamed graft over a nail", "over-nail", "autograft")
                    .femurs(0.7))
            .with(PRIMARY_AND_FINAL, CONTRADICTING_PERCENT, DAYS, STANDARD_ERRORS),
        series(
                23,
                "eight months after the spacer",
                2016,
                2020,
                membrane(10, 4.8, RANGE_ONLY).followed(11))
            .with(RANGES, SATISFACTION, FIRST_STAGE_INFECTION),
        series(24, "membrane patients one by one", 2011, 2018, membrane(9, 5.9, PER_PATIENT))
            .with(GRADES),
        series(25, "length and the second stage", 2008, 2016, membrane(28, 6.4, BANDS).femurs(0.3))
            .with(PRIMARY_ONLY, BANDS_OF_LENGTH, BY_INFECTION, FROM_INJURY),
        caseReport(
            26, "a membrane in the distal femur", 2019, membrane(1, 8, PER_PATIENT).femurs(1)),
        series(
                27,
                "spacers for open tibial fractures",
                2013,
                2018,
                membrane(16, 5.3, OVER_FOUR_CENTIMETRES).over(4.1).infected(0.3).secondLimbs(2))
            .with(PRIMARY_AND_FINAL, PHASES, COST_WITHOUT_YEAR, TWO_REPORTS_OF_UNION)
            .prospective());
  }

  private static ArmPlan membrane(int patients, double centimetres, LengthStyle length) {
    return ArmPlan.of("induced-membrane", patients, centimetres, length)
        .parts("induced membrane in two stages", "antibiotic-spacer", "autograft")
        .infected(0.5);
  }
}
