package gapwise.decision.weighing;

import gapwise.problem.Problem;
import gapwise.problem.Problems;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Whether wishes can be kept, all at once, by any weights; if not, which of them contradict each
 * other.
 *
 * @param criteria of the weighing
 * @param wishes what is said of their weights
 */
record WishCheck(List<Criterion> criteria, Wishes wishes) {
  private static final String ORDER = "order of importance";

  /** What stands against the wishes; empty if some weights keep to all of them. */
  List<Problem> problems() {
    Problems found = new Problems();
    names(found);
    limits(found);
    if (found.isEmpty()) {
      order(found);
    }
    if (found.isEmpty()) {
      sums(found);
    }
    return found.list();
  }

  private void names(Problems found) {
    List<String> known = criteria.stream().map(Criterion::code).toList();
    for (String code : new TreeSet<>(wishes.named())) {
      if (!known.contains(code)) {
        found.add(
            code,
            "unknown-criterion",
            "no criterion is called '" + code + "'; there are " + String.join(", ", known));
      }
    }
    Set<String> once = new HashSet<>();
    for (String code : wishes.order()) {
      if (!once.add(code)) {
        found.add(
            ORDER,
            "criterion-named-twice",
            "'" + code + "' stands in the order of importance twice; name it once");
      }
    }
  }

  private void limits(Problems found) {
    for (Map<String, Double> limits : List.of(wishes.atLeast(), wishes.atMost())) {
      for (Map.Entry<String, Double> limit : new TreeMap<>(limits).entrySet()) {
        if (!(limit.getValue() >= 0 && limit.getValue() <= 1)) {
          found.add(
              limit.getKey(),
              "weight-outside-0-to-1",
              "a weight lies from 0 to 1, was " + limit.getValue() + "; 0.2 stands for a fifth");
        }
      }
    }
    for (Criterion each : criteria) {
      double least = wishes.atLeast().getOrDefault(each.code(), 0.0);
      double most = wishes.atMost().getOrDefault(each.code(), 1.0);
      if (least > most && least <= 1 && most >= 0) {
        found.add(
            each.code(),
            "limits-cross",
            each.label()
                + " shall count at least "
                + digits(least)
                + " and at most "
                + digits(most)
                + "; no weight does both, so change one of the two");
      }
    }
  }

  private void order(Problems found) {
    WeightBounds bounds = WeightBounds.of(criteria, wishes);
    int[] order = bounds.order();
    for (int i = 0; i < order.length; i++) {
      for (int j = i + 1; j < order.length; j++) {
        if (bounds.upper()[order[i]] < bounds.lower()[order[j]]) {
          found.add(
              ORDER,
              "order-against-limits",
              criteria.get(order[i]).label()
                  + " stands before "
                  + criteria.get(order[j]).label()
                  + " in the order of importance, yet shall count at most "
                  + digits(bounds.upper()[order[i]])
                  + " where the other counts at least "
                  + digits(bounds.lower()[order[j]])
                  + "; change the order or one of the limits");
        }
      }
    }
  }

  private void sums(Problems found) {
    WeightBounds bounds = WeightBounds.of(criteria, wishes).ordered();
    if (bounds.leastSum() > 1 + WeightBounds.ROUNDING) {
      found.add(
          "least weights",
          "least-weights-over-1",
          "the least weights add up to "
              + digits(bounds.leastSum())
              + " ("
              + named(bounds.lower(), 0)
              + "), yet all weights together are 1; lower one of them");
    }
    if (bounds.greatestSum() < 1 - WeightBounds.ROUNDING) {
      found.add(
          "greatest weights",
          "greatest-weights-under-1",
          "the greatest weights add up to "
              + digits(bounds.greatestSum())
              + " ("
              + named(bounds.upper(), 1)
              + "), yet all weights together are 1; raise one of them");
    }
  }

  /** Limits by name, but those that say nothing. */
  private String named(double[] limits, double nothing) {
    List<String> named = new ArrayList<>();
    for (int i = 0; i < limits.length; i++) {
      if (limits[i] != nothing) {
        named.add(criteria.get(i).label() + " " + digits(limits[i]));
      }
    }
    return String.join(", ", named);
  }

  private static String digits(double weight) {
    return BigDecimal.valueOf(weight)
        .setScale(4, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }
}
