package gapwise.synthesis.bayes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TauPriorTest {
  @Test
  void halfNormalFallsByAHalfOfTheSquareOfScales() {
    TauPrior prior = new TauPrior.HalfNormal(0.5);
    assertEquals(-2, prior.logDensity(1) - prior.logDensity(0), 1e-15);
  }

  @Test
  void halfCauchyIsHalfAsHighAtItsScale() {
    TauPrior prior = new TauPrior.HalfCauchy(0.3);
    assertEquals(Math.log(0.5), prior.logDensity(0.3) - prior.logDensity(0), 1e-15);
  }

  @Test
  void halfCauchyFallsLikeASquareFarOut() {
    // (1 + 1e16)/(1 + 4e16) is a quarter to sixteen digits.
    TauPrior prior = new TauPrior.HalfCauchy(1);
    assertEquals(-Math.log(4), prior.logDensity(2e8) - prior.logDensity(1e8), 1e-14);
    assertEquals(2, prior.tailExponent());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
  void aScaleIsAboveZeroAndFinite(double scale) {
    assertThrows(IllegalArgumentException.class, () -> new TauPrior.HalfNormal(scale));
    assertThrows(IllegalArgumentException.class, () -> new TauPrior.HalfCauchy(scale));
  }

  @Test
  void aRangeRisesFromZeroOrAbove() {
    assertThrows(IllegalArgumentException.class, () -> new TauPrior.Uniform(1, 1));
    assertThrows(IllegalArgumentException.class, () -> new TauPrior.Uniform(-1, 1));
  }

  /**
   * The likelihood of k studies falls like tau^-(k-1) under a flat mean: so with a prior flat
   * throughout three studies are the fewest for a proper posterior, and the mean and the variance
   * of tau need four and five (Gelman, Bayesian Anal 2006;1:515, section 2.2, for the first).
   */
  @ParameterizedTest(name = "{0} studies")
  @CsvSource({"2, false, 0", "3, true, 0", "4, true, 1", "5, true, 2", "9, true, 2"})
  void aFlatPriorNeedsThreeStudiesAndMoreForMoments(int studies, boolean proper, int moments) {
    Priors priors = new Priors(MeanPrior.FLAT, new TauPrior.Flat());
    assertEquals(proper, priors.isProper(studies));
    assertEquals(moments, priors.highestMoment(studies));
  }

  @Test
  void aNormalPriorOfTheMeanSavesOneStudy() {
    Priors priors = new Priors(MeanPrior.normal(0, 10), new TauPrior.Flat());
    assertTrue(priors.isProper(2));
    assertFalse(priors.isProper(1));
  }
}
