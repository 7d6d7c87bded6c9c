package gapwise.cohort;

/** What a sign is about. */
public enum Fact {
  IDENTIFIER,
  REGISTER_NUMBER,
  TITLE,
  PLACE_IN_PRINT,
  REPORT_KIND,
  HOSPITAL,
  COUNTRY,
  TEAM,
  YEARS,
  METHOD,
  BONES,
  INFECTION,
  LENGTHS,
  AGES,
  NUMBERS,
  PATIENT_ROWS,
  LABEL
}
