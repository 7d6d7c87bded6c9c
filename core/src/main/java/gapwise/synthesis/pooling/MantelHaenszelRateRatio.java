package gapwise.synthesis.pooling;

import gapwise.effect.StudyData;
import gapwise.effect.TwoRates;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * log of sum(x1 T2/T)/sum(x2 T1/T) for events over person-time, with the variance of Greenland and
 * Robins, Biometrics 1985;41:55.
 */
final class MantelHaenszelRateRatio implements CountPooling {
  @Override
  public Pooled pool(List<? extends StudyData> studies, double level) {
    List<Stratum> strata = new ArrayList<>();
    double terms = 0;
    for (StudyData study : studies) {
      TwoRates rates = TwoRates.class.cast(study);
      double x1 = rates.intervention().events();
      double x2 = rates.comparator().events();
      double t1 = rates.intervention().personTime();
      double t2 = rates.comparator().personTime();
      double time = t1 + t2;
      terms += (x1 + x2) * (t1 / time) * (t2 / time);
      boolean finite = x1 > 0 && x2 > 0;
      strata.add(
          new Stratum(
              x1 * (t2 / time),
              x2 * (t1 / time),
              finite
                  ? OptionalDouble.of(Math.log(x1 / t1) - Math.log(x2 / t2))
                  : OptionalDouble.empty(),
              finite ? OptionalDouble.of(1 / x1 + 1 / x2) : OptionalDouble.empty()));
    }
    double r = Stratum.numerators(strata);
    double s = Stratum.denominators(strata);
    Optional<Pooled> none = Stratum.noRatio(r, s, true);
    if (none.isPresent()) {
      return none.get();
    }
    return Stratum.pooled(strata, Math.log(r / s), Math.sqrt(terms / (r * s)), level);
  }
}
