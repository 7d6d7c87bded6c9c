package gapwise.decision.weighing;

import java.util.List;
import java.util.Map;

/**
 * Alternatives weighed.
 *
 * @param alternatives as given
 * @param criteria as given
 * @param wishes as given
 * @param weighings how many times
 * @param differentDraws how many of the draws of outcomes differ, at most the weighings
 * @param walked whether weights come from a walk, since so few sets keep to the wishes; neighbours
 *     are then a little alike and {@link #error} is a little too small
 * @param standings one for each alternative, in their order
 * @param cuts by code of a criterion, how many outcomes lay outside its range and were worth what
 *     its end is; a criterion with none is not named
 */
public record Weighed(
    List<Alternative> alternatives,
    List<Criterion> criteria,
    Wishes wishes,
    int weighings,
    int differentDraws,
    boolean walked,
    List<Standing> standings,
    Map<String, Long> cuts)
    implements Weighing {
  public Weighed {
    alternatives = List.copyOf(alternatives);
    criteria = List.copyOf(criteria);
    standings = List.copyOf(standings);
    cuts = Map.copyOf(cuts);
  }

  /**
   * By how much a share may be off since so many were drawn and not all, with 95 of 100: 1.96
   * root(b(1 - b)/n), n the smaller number of weighings and of different draws. Not how uncertain
   * the evidence is.
   *
   * @param share from 0 to 1
   */
  public double error(double share) {
    return 1.96 * Math.sqrt(share * (1 - share) / differentDraws);
  }
}
