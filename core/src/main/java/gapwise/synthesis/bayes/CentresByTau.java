package gapwise.synthesis.bayes;

import gapwise.budget.Work;
import gapwise.synthesis.likelihood.MarginalLikelihood;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** The centre at each tau that was asked for. */
final class CentresByTau {
  private final MarginalLikelihood.OverSpreads likelihood;
  private final CentrePrior prior;
  private final FirstLook look;
  private final Map<Double, SmoothDensity> known = new HashMap<>();
  private Optional<SmoothDensity> last = Optional.empty();

  CentresByTau(MarginalLikelihood likelihood, CentrePrior prior, FirstLook look) {
    this.likelihood = likelihood.overSpreads();
    this.prior = prior;
    this.look = look;
  }

  /** What was worked out at a place. */
  SmoothDensity known(double place) {
    return Optional.ofNullable(known.get(place)).orElseThrow();
  }

  SmoothDensity at(double place, double tau) {
    Work.check();
    MarginalLikelihood.AtSpread at = likelihood.at(tau);
    SmoothDensity one =
        SmoothDensity.of(
            centre -> prior.logDensity(centre) + at.log(centre),
            last.map(SmoothDensity::edgesOfAnother).orElseGet(() -> look.centre(tau)),
            Double.NEGATIVE_INFINITY,
            Double.POSITIVE_INFINITY);
    last = Optional.of(one);
    known.put(place, one);
    return one;
  }
}
