package gapwise.synthesis.network;

import gapwise.budget.Work;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.MeanModel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The means of the rows of a network: sums of the comparisons that span it. */
final class NetworkMeans implements MeanModel {
  /**
   * Above this leverage, 1 less leverage has lost four digits and is worked out from the other rows
   * instead. Leverages sum to the number of parameters, so few rows are so heavy.
   */
  private static final double HEAVY = 0.9999;

  private final int parameters;
  private final List<SparseRow> rows;
  private final ParameterBlocks blocks;
  private final List<List<Integer>> rowsOfBlocks = new ArrayList<>();

  NetworkMeans(int parameters, List<SparseRow> rows) {
    this.parameters = parameters;
    this.rows = List.copyOf(rows);
    this.blocks = ParameterBlocks.of(parameters, this.rows);
    for (int b = 0; b < blocks.count(); b++) {
      rowsOfBlocks.add(new ArrayList<>());
    }
    for (int r = 0; r < this.rows.size(); r++) {
      rowsOfBlocks.get(blocks.block(this.rows.get(r).places()[0])).add(r);
    }
  }

  @Override
  public int parameters() {
    return parameters;
  }

  /** The parameters in a row. */
  SparseRow row(int place) {
    return rows.get(place);
  }

  @Override
  public NetworkFit fit(EffectSample sample, double[] weights) {
    return new NetworkFit(sample, weights);
  }

  /** The fit at a variance between studies. */
  NetworkFit fitAt(EffectSample sample, double tauSquared) {
    double[] weights = new double[sample.size()];
    for (int i = 0; i < weights.length; i++) {
      weights[i] = 1 / (sample.variance(i) + tauSquared);
    }
    return fit(sample, weights);
  }

  /** A fit, with the parameters and what their covariance says of any comparison. */
  final class NetworkFit implements Fit {
    private final EffectSample sample;
    private final double[] weights;
    private final NormalEquations equations;
    private final double[] estimates = new double[parameters];
    private final double[] residuals;
    private Optional<double[]> projections = Optional.empty();

    private NetworkFit(EffectSample sample, double[] weights) {
      Work.check();
      this.sample = sample;
      this.weights = weights.clone();
      this.equations = new NormalEquations(blocks, rows, weights);
      this.residuals = new double[rows.size()];
      takeResiduals();
      // The second turn solves for what rounding left of the first.
      for (int turn = 0; turn < 2; turn++) {
        double[] step = equations.solve(score());
        for (int p = 0; p < parameters; p++) {
          estimates[p] += step[p];
        }
        takeResiduals();
      }
    }

    private void takeResiduals() {
      for (int r = 0; r < residuals.length; r++) {
        residuals[r] = sample.effect(r) - rows.get(r).at(estimates);
      }
    }

    private double[] score() {
      double[] right = new double[parameters];
      for (int r = 0; r < residuals.length; r++) {
        SparseRow row = rows.get(r);
        double weighted = weights[r] * residuals[r];
        for (int i = 0; i < row.places().length; i++) {
          right[row.places()[i]] += weighted * row.factors()[i];
        }
      }
      return right;
    }

    @Override
    public double residual(int row) {
      return residuals[row];
    }

    @Override
    public double projection(int row) {
      if (projections.isEmpty()) {
        double[] variances = equations.variances(rows);
        double[] all = new double[rows.size()];
        Arrays.setAll(all, r -> projected(r, variances[r]));
        projections = Optional.of(all);
      }
      return projections.get()[row];
    }

    private double projected(int r, double variance) {
      double leverage = weights[r] * variance;
      if (leverage <= HEAVY) {
        return weights[r] * (1 - leverage);
      }
      NormalEquations others = without(r);
      return others.isDetermined()
          ? weights[r] / (1 + weights[r] * others.variance(rows.get(r).inBlock(blocks)))
          : 0;
    }

    /** The equations of the other rows of a row's block. */
    private NormalEquations without(int r) {
      int block = blocks.block(rows.get(r).places()[0]);
      List<SparseRow> others = new ArrayList<>();
      List<Double> otherWeights = new ArrayList<>();
      for (int other : rowsOfBlocks.get(block)) {
        if (other != r) {
          others.add(rows.get(other).inBlock(blocks));
          otherWeights.add(weights[other]);
        }
      }
      return new NormalEquations(
          ParameterBlocks.of(blocks.members(block).length, others),
          others,
          otherWeights.stream().mapToDouble(Double::doubleValue).toArray());
    }

    @Override
    public double logDeterminant() {
      return equations.logDeterminant();
    }

    /** Sum of squared residuals weighted. */
    double q() {
      double sum = 0;
      for (int r = 0; r < residuals.length; r++) {
        sum += weights[r] * residuals[r] * residuals[r];
      }
      return sum;
    }

    /** Whether all comparisons that span the network are determined. */
    boolean isDetermined() {
      return equations.isDetermined();
    }

    /** The parameters. */
    double[] estimates() {
      return estimates.clone();
    }

    /** The value of a comparison. */
    double estimate(SparseRow comparison) {
      return comparison.at(estimates);
    }

    /** The variance of a comparison. */
    double variance(SparseRow comparison) {
      return equations.variance(comparison);
    }

    /** The variance of each of many comparisons. */
    double[] variances(List<SparseRow> comparisons) {
      return equations.variances(comparisons);
    }

    /** The parameters moved by independent standard normal values in their joint distribution. */
    double[] drawn(double[] standard) {
      double[] moved = equations.scatter(standard);
      for (int p = 0; p < parameters; p++) {
        moved[p] += estimates[p];
      }
      return moved;
    }

    /** Minus twice the log likelihood of the rows but for log det of S; restricted or full. */
    double minusTwiceLogLikelihood(boolean restricted) {
      int terms = rows.size() - (restricted ? parameters : 0);
      double sum = terms * Math.log(2 * Math.PI) + q();
      for (double weight : weights) {
        sum -= Math.log(weight);
      }
      return restricted ? sum + logDeterminant() : sum;
    }
  }
}
