package gapwise.demonstration;

import static gapwise.demonstration.Habit.*;
import static gapwise.demonstration.LengthStyle.*;
import static gapwise.demonstration.StudyPlan.caseReport;
import static gapwise.demonstration.StudyPlan.series;

import java.util.List;

/** Studies of one arm in which bone is moved or lengthened in a frame. */
final class FramePlans {
  private static final String TRANSPORT = "bone-transport";
  private static final String SHORTENING = "acute-shortening-lengthening";
  private static final String FRAME = "frame-without-transport";

  /** The name under which two papers of one centre report patients of whom some are the same. */
  static final String HARBOUR_COHORT = "Harbour transport cohort (invented)";

  private FramePlans() {}

  static List<StudyPlan> all() {
    return List.of(
        series(1, "transport in a ring frame for gaps of the tibia", 2006, 2011, ring(18, 6.4))
            .with(PRIMARY_AND_FINAL, CONTRADICTING_PERCENT, GRADES, COUNTS_PER_PATIENT),
        series(
                2,
                "infected tibial gaps moved through in a ring frame",
                2010,
                2014,
                ring(16, 7.2).infected(1).followed(36))
            .patientsOf(2, HARBOUR_COHORT)
            .with(PRIMARY_AND_FINAL, TWO_TIME_POINTS, GRADES, WEIGHT_BEARING),
        series(
                3,
                "eleven years of transport in infected tibias",
                2010,
                2020,
                ring(27, 7.2, MEDIAN_AND_RANGE).infected(1).followed(48))
            .patientsOf(2, HARBOUR_COHORT)
            .with(PRIMARY_AND_FINAL, TWO_TIME_POINTS, BANDS_OF_LENGTH, MEDIANS, SATISFACTION),
        series(
                4,
                "transport over a nail",
                2012,
                2018,
                ArmPlan.of(TRANSPORT, 12, 6.1, MEDIAN_AND_QUARTILES)
                    .parts(
                        "segment moved over a nail in a frame on one side",
                        "over-nail",
                        "rail-frame")
                    .infected(0)
                    .femurs(0.5))
            .with(DAYS, PHASES, MEDIANS, SCORES),
        series(
                5,
                "both legs: transport after crush injury",
                2009,
                2016,
                ring(11, 5.8, MILLIMETRES).secondLimbs(3).lost(1))
            .with(PRIMARY_AND_FINAL, SATISFACTION, LIVING, WEEKS),
        series(
                6,
                "transport of gaps over four centimetres",
                2014,
                2019,
                ring(15, 7.0, OVER_FOUR_CENTIMETRES).over(4.1).infected(0.6))
            .with(PERCENT_ONLY, UNEXPLAINED_SPREAD, COST),
        series(
                7,
                "twelve patients one by one, transport of the tibia",
                2011,
                2015,
                ring(12, 6.6, PER_PATIENT).infected(0.7))
            .with(GRADES),
        series(
                8,
                "hexapod transport with each patient described",
                2016,
                2021,
                ArmPlan.of(TRANSPORT, 8, 6.0, PER_PATIENT)
                    .parts("segment transport in a hexapod frame", "hexapod-frame")
                    .infected(0.5))
            .with(WEIGHT_BEARING),
        series(9, "transport counted by bands of length", 2005, 2013, ring(23, 6.8, BANDS))
            .with(PRIMARY_ONLY, BANDS_OF_LENGTH, FROM_INJURY, PIN_SITE_RATE),
        series(
                10,
                "transport through an induced membrane",
                2015,
                2021,
                ArmPlan.of(TRANSPORT, 9, 8.1, PLUS_MINUS_UNEXPLAINED)
                    .parts(
                        "transport through an induced membrane in a ring frame",
                        "induced-membrane",
                        "ring-frame")
                    .infected(1))
            .with(PRIMARY_AND_FINAL, PHASES, UNEXPLAINED_SPREAD, WEIGHT_BEARING),
        caseReport(11, "a nine-centimetre gap moved through", 2017, ring(1, 9, PER_PATIENT)),
        series(12, "the shaft closed at once and lengthened above", 2008, 2015, shorten(14, 5.0))
            .with(PRIMARY_AND_FINAL, PHASES, GRADES, LIVING),
        series(
                13,
                "shortening for infected tibias",
                2013,
                2019,
                shorten(10, 4.6).infected(1).followed(20))
            .with(DAYS, TWO_TIME_POINTS, UNEXPLAINED_SPREAD),
        series(14, "shortening described patient by patient", 2010, 2014, shortenedOneByOne()),
        series(
                15,
                "shorten first, lengthen later: a hospital's habit",
                2015,
                2020,
                ArmPlan.of(SHORTENING, 17, 5.4, BRACKETS_UNEXPLAINED).infected(0.4).lost(2))
            .with(PRIMARY_ONLY, WEIGHT_BEARING, COUNTS_PER_PATIENT, BY_INFECTION),
        series(
                16,
                "compression in a frame, no segment moved",
                2007,
                2012,
                ArmPlan.of(FRAME, 13, 2.6, WORDS_ONLY)
                    .parts("compression at the site in a ring frame", "compression", "ring-frame"))
            .with(GRADES, WEEKS),
        series(
                17,
                "distraction at the site for short gaps",
                2012,
                2017,
                ArmPlan.of(FRAME, 9, 2.9, MEAN_ALONE)
                    .parts("distraction at the site in a ring frame", "distraction", "ring-frame")
                    .infected(0))
            .with(PRIMARY_AND_FINAL, LIVING));
  }

  private static ArmPlan ring(int patients, double centimetres) {
    return ring(patients, centimetres, LengthStyle.MEAN_AND_DEVIATION);
  }

  private static ArmPlan ring(int patients, double centimetres, LengthStyle length) {
    return ArmPlan.of(TRANSPORT, patients, centimetres, length)
        .parts("segment transport in a ring frame", "ring-frame")
        .infected(0.6);
  }

  private static ArmPlan shorten(int patients, double centimetres) {
    return ArmPlan.of(SHORTENING, patients, centimetres, LengthStyle.MEAN_AND_RANGE)
        .parts("acute shortening, then lengthening in a ring frame", "ring-frame");
  }

  private static ArmPlan shortenedOneByOne() {
    return ArmPlan.of(SHORTENING, 6, 4.3, PER_PATIENT).infected(0.5);
  }
}
