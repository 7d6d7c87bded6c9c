package gapwise.synthesis.pooling;

import gapwise.effect.StudyData;
import gapwise.effect.TwoByTwo;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * log of sum(a n2/N)/sum(c n1/N), with the variance of Greenland and Robins, Biometrics 1985;41:55.
 */
final class MantelHaenszelRiskRatio implements CountPooling {
  @Override
  public Pooled pool(List<? extends StudyData> studies, double level) {
    List<Stratum> strata = new ArrayList<>();
    double terms = 0;
    boolean noEvents = true;
    for (StudyData study : studies) {
      TwoByTwo t = TwoByTwo.class.cast(study);
      double a = t.intervention().events();
      double c = t.comparator().events();
      double n1 = t.intervention().total();
      double n2 = t.comparator().total();
      double n = t.total();
      // (m n1 n2 - a c N)/N^2 written without the difference of products of the size of N^3
      terms +=
          (a * t.comparator().nonEvents() * n1 + c * t.intervention().nonEvents() * n2) / n / n;
      noEvents &= a + c == 0;
      boolean finite = a > 0 && c > 0;
      strata.add(
          new Stratum(
              a * n2 / n,
              c * n1 / n,
              finite
                  ? OptionalDouble.of(Math.log(a / n1) - Math.log(c / n2))
                  : OptionalDouble.empty(),
              finite
                  ? OptionalDouble.of(
                      t.intervention().nonEvents() / a / n1 + t.comparator().nonEvents() / c / n2)
                  : OptionalDouble.empty()));
    }
    double r = Stratum.numerators(strata);
    double s = Stratum.denominators(strata);
    Optional<Pooled> none = Stratum.noRatio(r, s, noEvents);
    if (none.isPresent()) {
      return none.get();
    }
    return Stratum.pooled(strata, Math.log(r / s), Math.sqrt(terms / (r * s)), level);
  }
}
