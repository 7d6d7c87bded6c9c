package gapwise.screening;

import gapwise.numeric.ReferenceDistribution;
import gapwise.synthesis.agreement.Kappa;
import java.util.List;
import java.util.Optional;

/**
 * How far two people agree at a stage on what goes on: who is unsure keeps, and a text that was not
 * to be had does not go on.
 *
 * @param first one of both
 * @param second the other
 * @param bothKeep papers that both keep
 * @param onlyFirst that the first alone keeps
 * @param onlySecond that the second alone keeps
 * @param neither that none keeps
 */
public record Agreement(
    Reader first, Reader second, int bothKeep, int onlyFirst, int onlySecond, int neither) {

  /** Cohen's kappa with an interval of 95 %, at most 1. */
  public record Beyond(double estimate, double lower, double upper) {}

  /** Papers on which both have chosen. */
  public int papers() {
    return bothKeep + onlyFirst + onlySecond + neither;
  }

  /** Of these, those on which they chose alike. */
  public int alike() {
    return bothKeep + neither;
  }

  /**
   * Agreement beyond chance (Cohen 1960; interval by the standard error of Fleiss, Cohen and
   * Everitt 1969); empty where chance alone agrees, as when both keep everything.
   */
  public Optional<Beyond> kappa() {
    return Kappa.of(
            2,
            List.of(
                new Kappa.Pair(0, 0, bothKeep),
                new Kappa.Pair(0, 1, onlyFirst),
                new Kappa.Pair(1, 0, onlySecond),
                new Kappa.Pair(1, 1, neither)),
            (one, other) -> one == other ? 1 : 0)
        .map(
            kappa -> {
              double half = ReferenceDistribution.normal().multiplier(0.95) * kappa.standardError();
              return new Beyond(
                  kappa.estimate(),
                  Math.max(-1, kappa.estimate() - half),
                  Math.min(1, kappa.estimate() + half));
            });
  }
}
