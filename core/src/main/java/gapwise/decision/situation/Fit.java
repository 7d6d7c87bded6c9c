package gapwise.decision.situation;

import static gapwise.sentence.Sentences.say;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * How well the groups behind a number match a situation: the part of the information in groups that
 * are inside, at the edge, outside and unknown; the four sum to 1, or all are 0 without a group.
 */
public record Fit(double inside, double edge, double outside, double unknown) {
  /** No group at all. */
  public static final Fit NONE = new Fit(0, 0, 0, 0);

  private static final int HUNDRED = 100;

  public Fit {
    double sum = inside + edge + outside + unknown;
    if (!(inside >= 0 && edge >= 0 && outside >= 0 && unknown >= 0)
        || !(sum == 0 || Math.abs(sum - 1) < 1e-9)) {
      throw new IllegalArgumentException(
          "shares must sum to 1, were " + List.of(inside, edge, outside, unknown));
    }
  }

  /** One group: its match and its part of the information, 0 or more. */
  public record Part(Match match, double weight) {}

  /** The shares of some groups. */
  public static Fit of(List<Part> parts) {
    Map<Match, Double> sums = new EnumMap<>(Match.class);
    parts.forEach(part -> sums.merge(part.match(), part.weight(), Double::sum));
    double all = sums.values().stream().mapToDouble(Double::doubleValue).sum();
    return all <= 0
        ? NONE
        : new Fit(
            sums.getOrDefault(Match.INSIDE, 0.0) / all,
            sums.getOrDefault(Match.EDGE, 0.0) / all,
            sums.getOrDefault(Match.OUTSIDE, 0.0) / all,
            sums.getOrDefault(Match.UNKNOWN, 0.0) / all);
  }

  /** The share of one match. */
  public double of(Match match) {
    return switch (match) {
      case INSIDE -> inside;
      case EDGE -> edge;
      case OUTSIDE -> outside;
      case UNKNOWN -> unknown;
    };
  }

  /** The four in percent that sum to 100, by largest remainder; all 0 without a group. */
  public Map<Match, Integer> percents() {
    Map<Match, Integer> whole = new EnumMap<>(Match.class);
    Map<Match, Double> rest = new EnumMap<>(Match.class);
    int sum = 0;
    for (Match match : Match.values()) {
      double exact = of(match) * HUNDRED;
      int floor = (int) Math.floor(exact + 1e-9);
      whole.put(match, floor);
      rest.put(match, exact - floor);
      sum += floor;
    }
    int missing = equals(NONE) ? 0 : HUNDRED - sum;
    rest.entrySet().stream()
        .sorted(Map.Entry.<Match, Double>comparingByValue().reversed())
        .limit(missing)
        .forEach(one -> whole.merge(one.getKey(), 1, Integer::sum));
    return whole;
  }

  /** Always four numbers: "60 % inside, 20 % at the edge, 15 % outside, 5 % unknown". */
  public String words() {
    Map<Match, Integer> percents = percents();
    return say(
        "decision.fit",
        Map.of(
            "inside", percents.get(Match.INSIDE),
            "edge", percents.get(Match.EDGE),
            "outside", percents.get(Match.OUTSIDE),
            "unknown", percents.get(Match.UNKNOWN)));
  }
}
