package gapwise.demonstration;

import static gapwise.demonstration.Habit.*;
import static gapwise.demonstration.LengthStyle.*;
import static gapwise.demonstration.StudyPlan.caseReport;
import static gapwise.demonstration.StudyPlan.series;

import gapwise.evidence.vocabulary.Bone;
import java.util.List;

/** Studies of one arm of vascularised flaps, autograft and allograft. */
final class GraftPlans {
  private GraftPlans() {}

  static List<StudyPlan> all() {
    return List.of(
        series(28, "free fibula for long tibial gaps", 2003, 2012, flap(13, 9.2, MEAN_AND_RANGE))
            .with(PRIMARY_AND_FINAL, WEIGHT_BEARING, SATISFACTION),
        series(
                29,
                "osteocutaneous fibula with its skin",
                2008,
                2015,
                flap(9, 8.4, MEAN_AND_DEVIATION).parts("fibula with skin paddle", "skin-paddle"))
            .with(PRIMARY_AND_FINAL, COUNTS_PER_PATIENT, LIVING),
        series(30, "fibula flaps one by one", 2006, 2010, flap(7, 9.0, PER_PATIENT)),
        series(
                31,
                "double-barrel fibula in the femur",
                2011,
                2019,
                flap(8, 10.1, MEDIAN_AND_RANGE).femurs(1).infected(0.2).followed(40))
            .with(NO_FURTHER_GRAFT, MEDIANS, SCORES),
        series(
                32,
                "pedicled fibula moved across",
                2009,
                2014,
                flap(10, 7.6, BRACKETS_UNEXPLAINED).infected(0.5))
            .with(PRIMARY_ONLY, UNEXPLAINED_SPREAD, GRADES),
        caseReport(33, "a flap for a fourteen-centimetre gap", 2014, flap(1, 14, PER_PATIENT)),
        series(34, "flaps of the crest for the foot", 2010, 2016, footFlap())
            .with(FROM_INJURY, LIVING),
        series(35, "graft from the crest", 2004, 2010, graft(21, 2.9, MEAN_AND_DEVIATION))
            .with(PRIMARY_AND_FINAL, BY_INFECTION, STANDARD_ERRORS),
        series(
                36,
                "reamed graft behind a plate",
                2011,
                2016,
                graft(15, 3.6, MEAN_AND_RANGE)
                    .parts("graft reamed from the femur, plate", "over-plate")
                    .infected(0)
                    .femurs(0.5))
            .with(NO_FURTHER_GRAFT, WEEKS, WEIGHT_BEARING),
        series(
                37,
                "open grafting of infected gaps",
                2000,
                2006,
                graft(12, 3.2, WORDS_ONLY).infected(1).followed(24))
            .with(PERCENT_ONLY, TWO_TIME_POINTS, RANGES),
        series(38, "grafted patients in a table", 2013, 2017, graft(8, 3.4, PER_PATIENT)),
        series(
                39,
                "early grafting of open fractures",
                2015,
                2020,
                graft(18, 2.4, MEDIAN_AND_QUARTILES).infected(0.1).lost(4))
            .with(PRIMARY_AND_FINAL, MEDIANS, COST, SATISFACTION)
            .prospective(),
        series(
                40,
                "a second graft was often needed",
                2009,
                2013,
                graft(14, 5.1, BANDS).infected(0.4))
            .with(PRIMARY_AND_FINAL, BANDS_OF_LENGTH, LIMITS_OF_MEANS),
        series(41, "frozen allograft in the femur", 2002, 2009, allograft(11, 6.3).femurs(0.8))
            .with(PRIMARY_AND_FINAL, COUNTS_PER_PATIENT),
        series(42, "allograft with marrow", 2012, 2018, marrowAllograft())
            .with(PRIMARY_ONLY, DAYS, SCORES),
        series(43, "allograft patients one by one", 2014, 2019, allograftOneByOne()));
  }

  private static ArmPlan flap(int patients, double centimetres, LengthStyle length) {
    return ArmPlan.of("vascularised-bone-flap", patients, centimetres, length)
        .parts("vascularised fibula")
        .infected(0.4)
        .followed(34);
  }

  private static ArmPlan footFlap() {
    return flap(6, 4.5, RANGE_ONLY).parts("vascularised iliac crest").bone(Bone.FOOT);
  }

  private static ArmPlan graft(int patients, double centimetres, LengthStyle length) {
    return ArmPlan.of("autograft", patients, centimetres, length).infected(0.3).followed(22);
  }

  private static ArmPlan allograft(int patients, double centimetres) {
    return ArmPlan.of("allograft", patients, centimetres, LengthStyle.MEAN_AND_RANGE).infected(0.2);
  }

  private static ArmPlan marrowAllograft() {
    return ArmPlan.of("allograft", 9, 4.7, LengthStyle.MILLIMETRES)
        .parts("morselised allograft with marrow concentrate", "marrow-concentrate")
        .infected(0.1);
  }

  private static ArmPlan allograftOneByOne() {
    return ArmPlan.of("allograft", 5, 5.5, PER_PATIENT).infected(0.2);
  }
}
