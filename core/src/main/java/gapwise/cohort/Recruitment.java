package gapwise.cohort;

import gapwise.evidence.Study;
import gapwise.evidence.unit.PartialDate;
import java.util.OptionalInt;

/**
 * When the patients of a paper were taken in, in months since year 0: each end as the earliest and
 * the latest month that the paper can mean by it.
 *
 * @param given whether both ends are printed
 * @param earliestStart lowest first month
 * @param latestStart highest first month
 * @param earliestEnd lowest last month
 * @param latestEnd highest last month; the end of the year of publication where none is given
 */
record Recruitment(
    boolean given, int earliestStart, int latestStart, int earliestEnd, int latestEnd) {
  private static final int EVER = 2300 * 12;

  /**
   * Papers that do not give their years tell of patients of so many years back at most; assumed.
   */
  private static final int YEARS_BEFORE_PRINT = 15;

  /** How two spans lie to each other. */
  enum Relation {
    OVERLAP,
    /** They meet in one month, or only if a year means more of it than it says. */
    TOUCH,
    APART,
    UNKNOWN
  }

  static Recruitment of(Study study) {
    OptionalInt year = study.citation().year();
    int published = year.isPresent() ? year.getAsInt() * 12 + 11 : EVER;
    int longBefore = year.isPresent() ? (year.getAsInt() - YEARS_BEFORE_PRINT) * 12 : 0;
    boolean given = study.recruitmentFrom().isPresent() && study.recruitmentTo().isPresent();
    return new Recruitment(
        given,
        study.recruitmentFrom().map(PartialDate::earliestMonth).orElse(longBefore),
        study.recruitmentFrom().map(PartialDate::latestMonth).orElse(published),
        study.recruitmentTo().map(PartialDate::earliestMonth).orElse(longBefore),
        study.recruitmentTo().map(PartialDate::latestMonth).orElse(published));
  }

  Relation to(Recruitment other) {
    if (earliestStart > other.latestEnd || other.earliestStart > latestEnd) {
      return Relation.APART;
    }
    if (!given || !other.given) {
      return Relation.UNKNOWN;
    }
    int start = Math.max(latestStart, other.latestStart);
    int end = Math.min(earliestEnd, other.earliestEnd);
    boolean byPrintedYears =
        Math.max(earliestStart, other.earliestStart) + 11 <= Math.min(latestEnd, other.latestEnd);
    return start < end || byPrintedYears ? Relation.OVERLAP : Relation.TOUCH;
  }

  boolean within(Recruitment other) {
    return given
        && other.given
        && earliestStart >= other.earliestStart
        && latestEnd <= other.latestEnd;
  }

  /** As it is printed, such as "2004-04 to 2009". */
  static String printed(Study study) {
    return study.recruitmentFrom().map(PartialDate::toString).orElse("?")
        + " to "
        + study.recruitmentTo().map(PartialDate::toString).orElse("?");
  }
}
