package gapwise.search;

import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Risk;
import java.util.Set;

/**
 * How a study must have been made. An empty part does not narrow.
 *
 * @param designs designs, any of them
 * @param risks risk of bias as people judged it, any of them; in lists a study stands by the worst
 *     that was judged of any of its results, and where it was not judged as not rated
 */
public record HowMade(Set<Design> designs, Set<Risk> risks) {
  /** In any way. */
  public static final HowMade ANY = new HowMade(Set.of(), Set.of());

  public HowMade {
    designs = Set.copyOf(designs);
    risks = Set.copyOf(risks);
  }
}
