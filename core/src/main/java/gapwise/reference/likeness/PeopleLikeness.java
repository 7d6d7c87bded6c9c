package gapwise.reference.likeness;

import java.util.List;

/**
 * What two lists of authors have in common.
 *
 * @param first people of the first list that can be compared
 * @param second people of the second list that can be compared
 * @param common people who stand in both
 * @param notComparable people of the shorter list in a script that cannot be held against Latin
 *     letters and for whom nobody else stands in the other list
 * @param sameOrder whether those in common stand in the same order
 * @param sameFirst whether the first persons are one
 */
public record PeopleLikeness(
    int first, int second, int common, int notComparable, boolean sameOrder, boolean sameFirst) {

  /**
   * More authors than this are compared by their first ones only: enough to tell two papers apart.
   */
  private static final int MOST = 60;

  /** Whether one list has nobody that could be compared. */
  public boolean isUnknown() {
    return first == 0 || second == 0 || notComparable >= Math.min(first, second);
  }

  /** Those in common, of the shorter list without whom cannot be compared, 0 to 1; 0 if unknown. */
  public double ofShorter() {
    int comparable = Math.min(first, second) - notComparable;
    return comparable <= 0 ? 0 : Math.min(1, (double) common / comparable);
  }

  /** Those in common, of the longer list, 0 to 1; 0 if unknown. */
  public double ofLonger() {
    int comparable = Math.max(first, second) - notComparable;
    return comparable <= 0 ? 0 : Math.min(1, (double) common / comparable);
  }

  /** Whether the lists are one, whole or shortened to its first people. */
  public boolean isOneTeam() {
    return !isUnknown()
        && common >= 1
        && ofShorter() >= 0.75
        && (ofLonger() >= 0.6
            || (sameFirst && sameOrder && common >= Math.min(first, second) - notComparable));
  }

  /** Whether nobody stands in both although both name people who can be compared. */
  public boolean isNobody() {
    return !isUnknown() && common == 0;
  }

  /** Compares two lists in the order printed. */
  public static PeopleLikeness of(List<PersonName> one, List<PersonName> two) {
    List<PersonName> first = one.subList(0, Math.min(MOST, one.size()));
    List<PersonName> second = two.subList(0, Math.min(MOST, two.size()));
    int[] partner = new int[first.size()];
    boolean[] taken = new boolean[second.size()];
    int common = 0;
    for (int at = 0; at < first.size(); at++) {
      partner[at] = partnerOf(first.get(at), second, taken, at);
      if (partner[at] >= 0) {
        taken[partner[at]] = true;
        common++;
      }
    }
    int strangers =
        Math.min(
            strangers(first, partner, second, taken),
            Math.min(first.size(), second.size()) - common);
    boolean sameFirst = !first.isEmpty() && partner[0] == 0;
    return new PeopleLikeness(
        first.size(), second.size(), common, Math.max(0, strangers), inOrder(partner), sameFirst);
  }

  /** The person at the same place is asked first, then the others from the front. */
  private static int partnerOf(
      PersonName person, List<PersonName> others, boolean[] taken, int at) {
    if (at < others.size()
        && !taken[at]
        && PersonLikeness.of(person, others.get(at)).isOnePerson()) {
      return at;
    }
    for (int other = 0; other < others.size(); other++) {
      if (!taken[other] && PersonLikeness.of(person, others.get(other)).isOnePerson()) {
        return other;
      }
    }
    return -1;
  }

  private static int strangers(
      List<PersonName> first, int[] partner, List<PersonName> second, boolean[] taken) {
    int ofFirst = 0;
    for (int at = 0; at < first.size(); at++) {
      ofFirst += partner[at] < 0 && first.get(at).isInAnotherScript() ? 1 : 0;
    }
    int ofSecond = 0;
    for (int at = 0; at < second.size(); at++) {
      ofSecond += !taken[at] && second.get(at).isInAnotherScript() ? 1 : 0;
    }
    return ofFirst + ofSecond;
  }

  private static boolean inOrder(int[] partner) {
    int last = -1;
    for (int at : partner) {
      if (at >= 0 && at < last) {
        return false;
      }
      last = Math.max(last, at);
    }
    return true;
  }
}
