package gapwise.demonstration;

/** What an invented paper chooses to report, and the untidy way in which it does so. */
enum Habit {
  /** Union after the index procedure and union in the end, apart. */
  PRIMARY_AND_FINAL,
  /** Union after the index procedure only. */
  PRIMARY_ONLY,
  /** Union without planned or further grafting. */
  NO_FURTHER_GRAFT,
  /** The printed percentage of union does not follow from the printed counts. */
  CONTRADICTING_PERCENT,
  /** Only a percentage, no counts. */
  PERCENT_ONLY,
  /** Abstract and table disagree; both are kept, one counts. */
  TWO_REPORTS_OF_UNION,
  /** Infection at 12 and at 24 months. */
  TWO_TIME_POINTS,
  /** Union by band of length beside the total. */
  BANDS_OF_LENGTH,
  /** Union by infection at the start beside the total. */
  BY_INFECTION,
  /** Times in days, and the index in days for each centimetre. */
  DAYS,
  /** Times in weeks. */
  WEEKS,
  /** Time to union from the injury rather than from the operation. */
  FROM_INJURY,
  /** Medians throughout. */
  MEDIANS,
  /** Numbers in brackets or after a plus-minus sign that are not explained. */
  UNEXPLAINED_SPREAD,
  /** Standard errors in place of standard deviations. */
  STANDARD_ERRORS,
  /** 95 % limits of means. */
  LIMITS_OF_MEANS,
  /** Ranges and nothing in the middle. */
  RANGES,
  /** Milestones of weight bearing with their clocks. */
  WEIGHT_BEARING,
  /** The phases of treatment. */
  PHASES,
  /** Pin sites as events over months in the frame. */
  PIN_SITE_RATE,
  /** Excellent, good, fair, poor. */
  GRADES,
  /** Scores of function, health and pain. */
  SCORES,
  /** Patients satisfied, of patients rather than limbs. */
  SATISFACTION,
  /** Cost with currency and price year. */
  COST,
  /** Cost without the year of prices. */
  COST_WITHOUT_YEAR,
  /** Reoperations and complications as counts for each patient. */
  COUNTS_PER_PATIENT,
  /** Return to work, hospital days, final difference in length. */
  LIVING,
  /** One value for all arms together. */
  ALL_ARMS_TOGETHER,
  /** "No difference" without numbers. */
  NO_DIFFERENCE,
  /** An effect between arms without the numbers of the arms. */
  EFFECT_ONLY,
  /** Limbs that did not join, in place of those that did. */
  NONUNION,
  /** Times that do not say where they start. */
  NO_CLOCK,
  /** Quartiles beside a mean. */
  QUARTILES_OF_MEANS,
  /** All were infected, said by a percentage alone. */
  ALL_INFECTED_IN_PERCENT,
  /** No author is known. */
  NO_AUTHORS,
  /** The paper itself was not at hand; another one tells of it. */
  SECOND_HAND,
  /** How far the bone was moved, beside how much was missing. */
  LENGTH_TRANSPORTED,
  /** Infection between two stages. */
  FIRST_STAGE_INFECTION,
  /** Adverse events that the paper calls major, by patient and counted. */
  MAJOR_EVENTS,
  /** Excellent to poor by criteria other than the usual. */
  OTHER_CRITERIA
}
