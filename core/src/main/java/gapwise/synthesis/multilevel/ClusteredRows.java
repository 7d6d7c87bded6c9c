package gapwise.synthesis.multilevel;

import gapwise.synthesis.heterogeneity.EffectSample;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Effects with their variances, a design and the cluster of each row. Rows are kept cluster by
 * cluster, so that sums over a cluster run over neighbours. Immutable.
 */
public final class ClusteredRows {
  private final int[] places;
  private final int[] rowOf;
  private final int[] starts;
  private final double[] variances;
  private final double[][] columns;

  private ClusteredRows(int[] places, int[] starts, double[] variances, double[][] columns) {
    this.places = places;
    this.rowOf = new int[places.length];
    for (int row = 0; row < places.length; row++) {
      rowOf[places[row]] = row;
    }
    this.starts = starts;
    this.variances = variances;
    this.columns = columns;
  }

  /**
   * Rows with one mean.
   *
   * @param clusters of each row, equal for rows of one cluster
   */
  public static ClusteredRows of(EffectSample sample, List<String> clusters) {
    double[] ones = new double[sample.size()];
    Arrays.fill(ones, 1);
    return of(sample, clusters, List.of(ones));
  }

  /**
   * Rows whose mean depends on a design.
   *
   * @param clusters of each row, equal for rows of one cluster
   * @param design its columns, each with one value a row; linearly independent
   * @throws IllegalArgumentException if the numbers of rows differ
   */
  public static ClusteredRows of(
      EffectSample sample, List<String> clusters, List<double[]> design) {
    int k = sample.size();
    if (clusters.size() != k || design.stream().anyMatch(column -> column.length != k)) {
      throw new IllegalArgumentException(
          k + " effects with " + clusters.size() + " clusters and a design of other length");
    }
    List<String> names = clusters.stream().distinct().toList();
    Map<String, Integer> numbers = new HashMap<>();
    names.forEach(name -> numbers.put(name, numbers.size()));
    int[] numberOf =
        clusters.stream()
            .mapToInt(name -> Objects.requireNonNull(numbers.get(name), name))
            .toArray();
    int[] starts = new int[names.size() + 1];
    for (int number : numberOf) {
      starts[number + 1]++;
    }
    for (int c = 0; c < names.size(); c++) {
      starts[c + 1] += starts[c];
    }
    int[] next = Arrays.copyOf(starts, names.size());
    int[] places = new int[k];
    for (int i = 0; i < k; i++) {
      places[next[numberOf[i]]++] = i;
    }
    double[] variances = new double[k];
    double[][] columns = new double[design.size() + 1][k];
    for (int at = 0; at < k; at++) {
      variances[at] = sample.variance(places[at]);
      for (int j = 0; j < design.size(); j++) {
        columns[j][at] = design.get(j)[places[at]];
      }
      columns[design.size()][at] = sample.effect(places[at]);
    }
    return new ClusteredRows(places, starts, variances, columns);
  }

  /** Number of rows, k. */
  public int size() {
    return places.length;
  }

  /** Number of clusters, m. */
  public int clusters() {
    return starts.length - 1;
  }

  /** Number of columns of the design, p. */
  public int parameters() {
    return columns.length - 1;
  }

  /** Whether no cluster has a second row. */
  public boolean eachAlone() {
    return clusters() == size();
  }

  /** The first row of a cluster; that of the next is where it ends. */
  int start(int cluster) {
    return starts[cluster];
  }

  /** Where the row at a place stood in the sample. */
  int placeInSample(int row) {
    return places[row];
  }

  /** The sampling variance of the row that stood at a place of the sample. */
  double varianceInSample(int place) {
    return variances[rowOf[place]];
  }

  double variance(int row) {
    return variances[row];
  }

  /** A column of the design; the one after the last holds the effects. */
  double[] column(int column) {
    return columns[column];
  }
}
