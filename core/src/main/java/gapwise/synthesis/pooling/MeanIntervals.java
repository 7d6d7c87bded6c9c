package gapwise.synthesis.pooling;

import java.util.List;
import java.util.Optional;

/** Every interval for a pooled mean; a new one is one line here. */
public final class MeanIntervals {
  private static final List<MeanInterval> ALL =
      List.of(
          new HartungKnappNeverNarrower(),
          new HartungKnapp(),
          new NormalInterval(),
          new ProfileLikelihoodInterval());

  private MeanIntervals() {}

  /** All of them, the usual one for random effects first. */
  public static List<MeanInterval> all() {
    return ALL;
  }

  /** The interval of a name. */
  public static Optional<MeanInterval> named(String name) {
    return ALL.stream().filter(interval -> interval.name().equals(name)).findFirst();
  }

  /** The usual one for random effects. */
  public static MeanInterval usual() {
    return ALL.get(0);
  }

  /** Estimate and normal multiple of its standard error. */
  public static MeanInterval normal() {
    return ALL.get(2);
  }
}
