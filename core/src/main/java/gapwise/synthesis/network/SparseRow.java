package gapwise.synthesis.network;

import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;

/**
 * A sum of few of many parameters.
 *
 * @param places of the parameters, rising
 * @param factors of each
 */
record SparseRow(int[] places, double[] factors) {
  static SparseRow of(SpanningForest.Path path) {
    TreeMap<Integer, Double> sum = new TreeMap<>();
    for (int i = 0; i < path.edges().length; i++) {
      sum.put(path.edges()[i], path.signs()[i]);
    }
    return of(sum);
  }

  /** A weighted sum of sums. */
  static SparseRow sum(List<SparseRow> rows, double[] weights) {
    TreeMap<Integer, Double> sum = new TreeMap<>();
    for (int r = 0; r < rows.size(); r++) {
      SparseRow row = rows.get(r);
      for (int i = 0; i < row.places.length; i++) {
        sum.merge(row.places[i], weights[r] * row.factors[i], Double::sum);
      }
    }
    return of(sum);
  }

  private static SparseRow of(TreeMap<Integer, Double> sum) {
    return new SparseRow(
        sum.keySet().stream().mapToInt(Integer::intValue).toArray(),
        sum.values().stream().mapToDouble(Double::doubleValue).toArray());
  }

  /**
   * The same and a further parameter, whose place comes after all others, unless its factor is 0.
   */
  SparseRow with(int place, double factor) {
    if (factor == 0) {
      return this;
    }
    int[] more = Arrays.copyOf(places, places.length + 1);
    double[] moreFactors = Arrays.copyOf(factors, factors.length + 1);
    more[places.length] = place;
    moreFactors[places.length] = factor;
    return new SparseRow(more, moreFactors);
  }

  /** The same with the places that its parameters have in their block. */
  SparseRow inBlock(ParameterBlocks blocks) {
    return new SparseRow(Arrays.stream(places).map(blocks::place).toArray(), factors);
  }

  /** The value for values of all parameters. */
  double at(double[] parameters) {
    double value = 0;
    for (int i = 0; i < places.length; i++) {
      value += factors[i] * parameters[places[i]];
    }
    return value;
  }
}
