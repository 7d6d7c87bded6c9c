package gapwise.decision.weighing;

import gapwise.budget.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * Ranks and weights counted over weighings.
 *
 * @param ranks by alternative and rank: how often, ties shared
 * @param weights by alternative and criterion: weights summed over draws in which it is first
 * @param n weighings
 */
record Tally(double[][] ranks, double[][] weights, int n) {
  static Tally of(Scale scale, WeightSampler sampler, int n) {
    int all = scale.alternatives();
    double[][] ranks = new double[all][all];
    double[][] first = new double[all][scale.criteria().size()];
    for (int draw = 0; draw < n; draw++) {
      double[] weights = sampler.next();
      double[][] parts = Scale.ranks(scale.worth(draw, weights));
      for (int a = 0; a < all; a++) {
        for (int rank = 0; rank < all; rank++) {
          ranks[a][rank] += parts[a][rank];
        }
        for (int c = 0; c < weights.length; c++) {
          first[a][c] += parts[a][0] * weights[c];
        }
      }
    }
    return new Tally(ranks, first, n);
  }

  List<Standing> standings(List<Alternative> alternatives, Scale scale) {
    List<Standing> standings = new ArrayList<>();
    for (int a = 0; a < ranks.length; a++) {
      List<Double> shares = list(Arrays.stream(ranks[a]).map(times -> times / n));
      standings.add(new Standing(alternatives.get(a), shares, favour(a, scale)));
    }
    return List.copyOf(standings);
  }

  private Optional<Standing.Favour> favour(int a, Scale scale) {
    double times = ranks[a][0];
    if (times == 0) {
      return Optional.empty();
    }
    double[] central = Arrays.stream(weights[a]).map(sum -> sum / times).toArray();
    double first = 0;
    for (int draw = 0; draw < n; draw++) {
      Work.check();
      first += Scale.first(scale.worth(draw, central), a);
    }
    return Optional.of(new Standing.Favour(list(Arrays.stream(central)), first / n));
  }

  private static List<Double> list(DoubleStream numbers) {
    return numbers.boxed().toList();
  }
}
