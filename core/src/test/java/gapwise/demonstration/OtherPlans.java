package gapwise.demonstration;

import static gapwise.demonstration.Habit.*;
import static gapwise.demonstration.LengthStyle.*;
import static gapwise.demonstration.StudyPlan.caseReport;
import static gapwise.demonstration.StudyPlan.series;

import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Design;
import java.util.List;

/** Studies of one arm of printed scaffolds, combinations, amputation and another method. */
final class OtherPlans {
  private OtherPlans() {}

  static List<StudyPlan> all() {
    return List.of(
        series(44, "printed titanium cages", 2016, 2021, scaffold(11, 7.4, MEAN_AND_RANGE))
            .with(PRIMARY_AND_FINAL, WEIGHT_BEARING, SCORES, COST),
        series(45, "scaffolds described one by one", 2017, 2021, scaffold(6, 8.2, PER_PATIENT))
            .with(SATISFACTION),
        caseReport(
            46,
            "a graft inside a scaffold over a fusion nail",
            2020,
            scaffold(1, 7.5, PER_PATIENT)
                .parts(
                    "graft inside a printed scaffold over a nail that fuses the ankle",
                    "autograft",
                    "scaffold",
                    "fusion-nail",
                    "arthrodesis")
                .bone(Bone.TIBIA)),
        caseReport(
            47,
            "a scaffold in the shaft of the femur",
            2019,
            scaffold(1, 11, PER_PATIENT).femurs(1)),
        series(48, "scaffold within a membrane", 2018, 2022, membraneScaffold())
            .with(PRIMARY_ONLY, RANGES, UNEXPLAINED_SPREAD)
            .prospective(),
        series(49, "nail, flap and transport together", 2009, 2017, combined(12, 8.6))
            .with(PRIMARY_AND_FINAL, PHASES, COUNTS_PER_PATIENT),
        series(50, "membrane, then transport", 2013, 2019, combined(8, 9.4).infected(1))
            .with(TWO_TIME_POINTS, WEEKS, BY_INFECTION),
        series(51, "amputation within the first days", 2005, 2014, primaryAmputation())
            .with(LIVING, SCORES, WEIGHT_BEARING),
        series(52, "amputation after failed salvage", 2006, 2018, secondaryAmputation())
            .with(LIVING, COST_WITHOUT_YEAR, SATISFACTION),
        series(53, "a spacer left in place for good", 2015, 2021, spacerForGood())
            .with(TWO_TIME_POINTS, SCORES),
        series(61, "transport by a nail inside the bone", 2016, 2022, lengtheningNail())
            .with(PRIMARY_AND_FINAL, WEIGHT_BEARING, MEDIANS),
        series(62, "amputation, when it was done not told", 2004, 2012, amputation())
            .with(LIVING, SCORES),
        series(63, "mesh cages filled with graft", 2008, 2015, cage()).with(PRIMARY_ONLY, RANGES),
        series(64, "fusion of the knee across the gap", 2010, 2018, kneeFusion())
            .with(PRIMARY_AND_FINAL, SCORES),
        StudyPlan.of(
                65,
                Design.RETROSPECTIVE,
                "salvage of infected femurs, told of in a later paper",
                2003,
                2009,
                List.of(toldOfByOthers()))
            .with(
                NONUNION,
                NO_CLOCK,
                QUARTILES_OF_MEANS,
                ALL_INFECTED_IN_PERCENT,
                NO_AUTHORS,
                SECOND_HAND,
                MAJOR_EVENTS),
        series(66, "nails that move bone, eight years on", 2014, 2021, lengtheningNails())
            .suspectedWith(61)
            .with(PRIMARY_ONLY, LENGTH_TRANSPORTED, MAJOR_EVENTS, OTHER_CRITERIA));
  }

  private static ArmPlan scaffold(int patients, double centimetres, LengthStyle length) {
    return ArmPlan.of("printed-scaffold", patients, centimetres, length)
        .parts("printed porous titanium scaffold with graft inside", "autograft")
        .infected(0.3)
        .femurs(0.4)
        .followed(20);
  }

  private static ArmPlan cage() {
    return ArmPlan.of("metal-cage", 8, 6.2, LengthStyle.MEAN_AND_RANGE)
        .parts("titanium mesh cage with graft, over a nail", "autograft", "over-nail")
        .infected(0.2);
  }

  private static ArmPlan kneeFusion() {
    return ArmPlan.of("arthrodesis", 10, 7.2, LengthStyle.MEAN_AND_DEVIATION)
        .parts("fusion of the knee over a long nail", "fusion-nail")
        .bone(Bone.KNEE)
        .infected(0.5);
  }

  private static ArmPlan membraneScaffold() {
    return scaffold(9, 6.9, LengthStyle.RANGE_ONLY)
        .parts("resorbable printed scaffold in an induced membrane", "induced-membrane")
        .infected(0.6);
  }

  private static ArmPlan combined(int patients, double centimetres) {
    return ArmPlan.of("combined", patients, centimetres, LengthStyle.MEAN_AND_DEVIATION)
        .parts("several methods by turns, ring frame in all", "bone-transport", "ring-frame")
        .infected(0.6);
  }

  private static ArmPlan primaryAmputation() {
    return ArmPlan.of("primary-amputation", 18, 9, LengthStyle.NOTHING).infected(0).followed(30);
  }

  private static ArmPlan secondaryAmputation() {
    return ArmPlan.of("secondary-amputation", 13, 8, LengthStyle.WORDS_ONLY).infected(0.6);
  }

  private static ArmPlan lengtheningNail() {
    return lengtheningNail(9, LengthStyle.MEDIAN_AND_QUARTILES);
  }

  private static ArmPlan lengtheningNail(int patients, LengthStyle length) {
    return ArmPlan.of("internal-bone-transport", patients, 6.6, length)
        .parts("segment moved by a magnetic nail under a plate", "lengthening-nail", "over-plate")
        .infected(0.4)
        .femurs(0.5)
        .followed(26);
  }

  /** More patients of the same hospital, with only their mean length. */
  private static ArmPlan lengtheningNails() {
    return lengtheningNail(14, LengthStyle.MEAN_ALONE);
  }

  private static ArmPlan toldOfByOthers() {
    return ArmPlan.of("mixed-salvage", 16, 7.4, LengthStyle.RANGE_FROM_NOTHING)
        .parts("limbs kept by whatever means the surgeon chose")
        .bone(Bone.FEMUR)
        .infected(1);
  }

  private static ArmPlan amputation() {
    return ArmPlan.of("amputation", 15, 8, LengthStyle.NOTHING).infected(0.4).followed(28);
  }

  private static ArmPlan spacerForGood() {
    return ArmPlan.of("other", 7, 7.8, LengthStyle.MEAN_AND_RANGE)
        .parts(
            "cement spacer over a nail, left in place for good", "over-nail", "antibiotic-spacer")
        .infected(0.7);
  }
}
