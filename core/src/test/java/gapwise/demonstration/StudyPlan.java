package gapwise.demonstration;

import gapwise.evidence.vocabulary.Design;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * One invented study: who, where, when, and what its paper reports.
 *
 * @param number 1 or more, unique
 * @param stream of the patients; studies with one stream draw the same patients in the same order
 * @param design design
 * @param subject end of the title
 * @param from first year of recruitment
 * @param to last year of recruitment
 * @param arms one or more
 * @param habits what is reported and how
 * @param cohort name of a cohort that several papers report
 * @param abstractOf number of the full article of which this is a conference abstract
 * @param suspected number of another study whose patients may be the same
 */
record StudyPlan(
    int number,
    int stream,
    Design design,
    String subject,
    int from,
    int to,
    List<ArmPlan> arms,
    Set<Habit> habits,
    Optional<String> cohort,
    Optional<Integer> abstractOf,
    Optional<Integer> suspected) {

  StudyPlan {
    arms = List.copyOf(arms);
    habits = Set.copyOf(habits);
  }

  static StudyPlan of(
      int number, Design design, String subject, int from, int to, List<ArmPlan> arms) {
    return new StudyPlan(
        number,
        number,
        design,
        subject,
        from,
        to,
        arms,
        Set.of(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  static StudyPlan series(int number, String subject, int from, int to, ArmPlan arm) {
    return of(number, Design.RETROSPECTIVE_SERIES, subject, from, to, List.of(arm));
  }

  static StudyPlan caseReport(int number, String subject, int year, ArmPlan arm) {
    return of(number, Design.CASE_REPORT, subject, year, year, List.of(arm));
  }

  StudyPlan with(Habit first, Habit... more) {
    Set<Habit> all = EnumSet.of(first, more);
    return new StudyPlan(
        number, stream, design, subject, from, to, arms, all, cohort, abstractOf, suspected);
  }

  StudyPlan prospective() {
    return new StudyPlan(
        number,
        stream,
        Design.PROSPECTIVE_SERIES,
        subject,
        from,
        to,
        arms,
        habits,
        cohort,
        abstractOf,
        suspected);
  }

  /** The patients of another study again, in part or whole, under the name of their cohort. */
  StudyPlan patientsOf(int other, String cohortName) {
    return new StudyPlan(
        number,
        other,
        design,
        subject,
        from,
        to,
        arms,
        habits,
        Optional.of(cohortName),
        abstractOf,
        suspected);
  }

  /** Patients of another study again, which neither paper says: a reviewer only suspects it. */
  StudyPlan suspectedWith(int other) {
    return new StudyPlan(
        number,
        other,
        design,
        subject,
        from,
        to,
        arms,
        habits,
        cohort,
        abstractOf,
        Optional.of(other));
  }

  StudyPlan abstractOf(int article) {
    return new StudyPlan(
        number,
        article,
        design,
        subject,
        from,
        to,
        arms,
        habits,
        cohort,
        Optional.of(article),
        suspected);
  }

  boolean reports(Habit habit) {
    return habits.contains(habit);
  }

  String id() {
    return idOf(number);
  }

  static String idOf(int number) {
    return String.format("invented-%02d", number);
  }

  /** The kind of study with its number, as titles begin. */
  String titleStart() {
    String kind =
        switch (design) {
          case CASE_REPORT -> "Invented case report";
          case RANDOMISED -> "Invented trial";
          case RETROSPECTIVE -> "Invented report";
          case PROSPECTIVE_COMPARATIVE, RETROSPECTIVE_COMPARATIVE -> "Invented comparison";
          default -> "Invented series";
        };
    return String.format("%s %02d", kind, number);
  }
}
