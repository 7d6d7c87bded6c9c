package gapwise.synthesis.network;

/** The effects of all treatments of one connected network, normal together. */
public interface JointEffects {
  /** Independent normal values that a draw is made from. */
  int parameters();

  /** One treatment less another, by places from 0. */
  Comparison comparison(int one, int other);

  /** Each treatment less the first, moved by so many independent standard normal values. */
  double[] drawn(double[] standard);
}
