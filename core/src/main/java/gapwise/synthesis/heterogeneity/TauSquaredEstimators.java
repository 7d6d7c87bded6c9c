package gapwise.synthesis.heterogeneity;

import java.util.List;
import java.util.Optional;

/** Every estimator of tau squared; a new one is one line here. */
public final class TauSquaredEstimators {
  private static final List<TauSquaredEstimator> ALL =
      List.of(
          new RestrictedMaximumLikelihood(),
          new MaximumLikelihood(),
          new DerSimonianLaird(),
          new TwoStepDerSimonianLaird(),
          new PauleMandel(),
          new EmpiricalBayes(),
          new HunterSchmidt(),
          new SidikJonkman(),
          new Hedges());

  private TauSquaredEstimators() {}

  /** All of them, the usual one first. */
  public static List<TauSquaredEstimator> all() {
    return ALL;
  }

  /** The estimator of a name. */
  public static Optional<TauSquaredEstimator> named(String name) {
    return ALL.stream().filter(estimator -> estimator.name().equals(name)).findFirst();
  }
}
