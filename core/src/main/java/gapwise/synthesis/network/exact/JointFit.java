package gapwise.synthesis.network.exact;

import gapwise.numeric.CholeskyFactor;
import gapwise.synthesis.network.Comparison;
import gapwise.synthesis.network.JointEffects;

/** The effects of a connected network as the information at the top has them: normal together. */
final class JointFit implements JointEffects {
  private final Pieces pieces;
  private final ExactFit fit;
  private final CholeskyFactor root;

  JointFit(Pieces pieces, ExactFit fit) {
    this.pieces = pieces;
    this.fit = fit;
    int p = pieces.parameters();
    double[][] effects = new double[p][p];
    for (int i = 0; i < p; i++) {
      System.arraycopy(fit.covariance()[i], 0, effects[i], 0, p);
    }
    this.root = CholeskyFactor.of(effects);
  }

  @Override
  public int parameters() {
    return pieces.parameters();
  }

  @Override
  public Comparison comparison(int one, int other) {
    return fit.comparison(pieces.contrast(one, other));
  }

  /** With one piece the first treatment is 0 and the parameters are the others, in their order. */
  @Override
  public double[] drawn(double[] standard) {
    double[] moved = root.times(standard);
    double[] drawn = new double[moved.length + 1];
    for (int i = 0; i < moved.length; i++) {
      drawn[i + 1] = fit.top().point()[i] + moved[i];
    }
    return drawn;
  }
}
