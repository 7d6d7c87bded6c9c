package gapwise.evidence.rule;

/**
 * Which part of a record a finding is about. Fields are named by their template columns, as in the
 * reasons for missing values; an empty field means the whole part.
 */
public sealed interface RecordPart {
  /** The id of the study. */
  String study();

  /** The template column; empty for the whole part. */
  String field();

  /** What belongs to the study itself. */
  record OfStudy(String study, String field) implements RecordPart {}

  /** What belongs to one arm. */
  record OfArm(String study, String arm, String field) implements RecordPart {}

  /** What a paper gives for all arms together. */
  record OfAllArms(String study, String field) implements RecordPart {}

  /**
   * What belongs to one reported outcome.
   *
   * @param index position in the study's list of outcomes, from 0
   */
  record OfOutcome(String study, int index, String field) implements RecordPart {}

  /**
   * What people judged of the study.
   *
   * @param index position in the study's list of appraisals, from 0
   */
  record OfAppraisal(String study, int index, String field) implements RecordPart {}

  /**
   * What belongs to one published curve.
   *
   * @param index position in the study's list of curves, from 0
   */
  record OfCurve(String study, int index, String field) implements RecordPart {}

  /** What belongs to one patient. */
  record OfPatient(String study, String patient, String field) implements RecordPart {}
}
