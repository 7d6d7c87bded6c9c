package gapwise.decision.weighing;

/** What may come of each alternative on each criterion, drawn many times. */
public interface Draws {
  /**
   * One outcome, in the unit of the criterion. Asked again, it answers the same.
   *
   * @param draw from 0 to any number; those beyond {@link #different} repeat
   * @param alternative its place, from 0
   * @param criterion its place, from 0
   */
  double outcome(int draw, int alternative, int criterion);

  /** How many draws there are before they repeat; {@link Integer#MAX_VALUE} where none vary. */
  int different();
}
