package gapwise.demonstration;

import static gapwise.demonstration.Habit.*;
import static gapwise.demonstration.LengthStyle.FOR_ALL_ARMS;
import static gapwise.demonstration.LengthStyle.MEAN_AND_DEVIATION;
import static gapwise.demonstration.LengthStyle.MEAN_AND_RANGE;
import static gapwise.demonstration.LengthStyle.MEDIAN_AND_QUARTILES;
import static gapwise.demonstration.LengthStyle.NOTHING;

import gapwise.evidence.vocabulary.Design;
import java.util.List;

/**
 * Studies of two arms. In the retrospective ones, long infected gaps go to the frame as they do in
 * life; only the trial lets chance decide.
 */
final class ComparisonPlans {
  private static final String TRANSPORT = "bone-transport";
  private static final String MEMBRANE = "induced-membrane";

  private ComparisonPlans() {}

  static List<StudyPlan> all() {
    return List.of(
        retrospective(
                54,
                "transport or membrane for the tibia",
                arm(TRANSPORT, 22, 7.6, MEAN_AND_DEVIATION).infected(0.8),
                arm(MEMBRANE, 20, 5.4, MEAN_AND_DEVIATION).infected(0.4))
            .with(PRIMARY_AND_FINAL, WEIGHT_BEARING, EFFECT_ONLY, COUNTS_PER_PATIENT),
        StudyPlan.of(
                55,
                Design.RANDOMISED,
                "transport or membrane by the toss of a coin",
                2017,
                2020,
                List.of(
                    arm(TRANSPORT, 14, 6.0, MEDIAN_AND_QUARTILES).infected(1).followed(26),
                    arm(MEMBRANE, 15, 6.0, MEDIAN_AND_QUARTILES).infected(1).followed(26)))
            .with(PRIMARY_AND_FINAL, TWO_TIME_POINTS, SCORES, NO_DIFFERENCE),
        retrospective(
                56,
                "transport or free fibula",
                arm(TRANSPORT, 13, 8.0, MEAN_AND_RANGE).infected(0.8),
                arm("vascularised-bone-flap", 11, 9.5, MEAN_AND_RANGE).infected(0.3))
            .with(NO_DIFFERENCE, SATISFACTION, COST),
        retrospective(
                57,
                "printed scaffold or membrane",
                arm("printed-scaffold", 10, 6.8, MEAN_AND_DEVIATION).infected(0.2),
                arm(MEMBRANE, 12, 6.1, MEAN_AND_DEVIATION).infected(0.5))
            .with(PRIMARY_ONLY, WEIGHT_BEARING, NO_DIFFERENCE),
        retrospective(
                58,
                "own bone or bone of a donor",
                arm("autograft", 16, 4.0, FOR_ALL_ARMS).infected(0.2),
                arm("allograft", 12, 4.0, FOR_ALL_ARMS).infected(0.2))
            .with(PRIMARY_AND_FINAL, ALL_ARMS_TOGETHER, EFFECT_ONLY),
        StudyPlan.of(
                59,
                Design.PROSPECTIVE_COMPARATIVE,
                "amputation or salvage two years on",
                2008,
                2015,
                List.of(
                    arm("primary-amputation", 17, 9, NOTHING).infected(0),
                    arm("mixed-salvage", 26, 6.5, MEAN_AND_DEVIATION)
                        .parts("salvage by the surgeon's choice, methods not told apart")
                        .infected(0.3)))
            .with(LIVING, SCORES, NO_DIFFERENCE, COST),
        retrospective(
                60,
                "membrane with a nail or with a plate",
                arm(MEMBRANE, 13, 5.2, MEAN_AND_RANGE).parts("membrane over a nail", "over-nail"),
                arm(MEMBRANE, 11, 5.6, MEAN_AND_RANGE).parts("membrane, plate", "over-plate"))
            .with(PRIMARY_AND_FINAL, DAYS, NO_DIFFERENCE));
  }

  private static StudyPlan retrospective(
      int number, String subject, ArmPlan first, ArmPlan second) {
    return StudyPlan.of(
        number,
        Design.RETROSPECTIVE_COMPARATIVE,
        subject,
        2004 + number % 9,
        2011 + number % 9,
        List.of(first, second));
  }

  private static ArmPlan arm(String method, int patients, double cm, LengthStyle length) {
    return ArmPlan.of(method, patients, cm, length);
  }
}
