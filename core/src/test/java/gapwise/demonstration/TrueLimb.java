package gapwise.demonstration;

import gapwise.evidence.vocabulary.Bone;

/**
 * One limb of the invented country with all that became of it, before any of it is reported. Times
 * are months from the definitive operation unless the name says otherwise.
 */
record TrueLimb(Person person, Start start, Course course, Result result) {

  record Person(int ageYears, boolean male, boolean smoker, boolean diabetic) {}

  /** How the limb came to the definitive operation. */
  record Start(
      Bone bone,
      String segment,
      double defectCentimetres,
      boolean infected,
      int gustilo,
      double monthsFromInjury,
      double weeksBetweenStages,
      int previousOperations) {}

  /** The treatment; the time of infection is infinite when it never comes. */
  record Course(
      boolean primaryUnion,
      boolean finalUnion,
      double unionMonths,
      double frameMonths,
      double infectionMonths,
      double partialWeightMonths,
      double fullInSupportMonths,
      double unsupportedMonths,
      double followUpMonths,
      int unplannedOperations,
      int plannedOperations,
      int complications,
      double hospitalDays,
      double cost) {}

  /** What remains. */
  record Result(
      boolean refracture,
      boolean amputated,
      boolean died,
      boolean pinSiteInfection,
      boolean donorTrouble,
      boolean flapLost,
      boolean implantFailed,
      boolean malaligned,
      double lengthDifferenceCentimetres,
      int lefs,
      int sf36Physical,
      int pain,
      boolean satisfied,
      boolean backAtWork) {}

  boolean infectedWithin(double months) {
    return course.infectionMonths() <= Math.min(months, course.followUpMonths());
  }

  boolean infectedInFollowUp() {
    return infectedWithin(course.followUpMonths());
  }
}
