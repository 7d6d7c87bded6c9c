package gapwise.cohort;

import java.util.ArrayList;
import java.util.List;

/**
 * What one way of looking at two records finds.
 *
 * @param verdict what they may be to each other
 * @param strength how much it stands on
 * @param signs the reasons
 */
record Found(Verdict verdict, Strength strength, List<Sign> signs) {
  Found {
    signs = List.copyOf(signs);
  }

  Found with(List<Sign> more) {
    List<Sign> all = new ArrayList<>(signs);
    more.stream()
        .filter(sign -> signs.stream().noneMatch(own -> own.fact() == sign.fact()))
        .forEach(all::add);
    return new Found(verdict, strength, all);
  }
}
