package gapwise.synthesis.bayes;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.effect.Interval;
import gapwise.numeric.Continuous;
import gapwise.numeric.NormalMixture;
import org.junit.jupiter.api.Test;

class ShortestIntervalTest {
  /** Waiting times of mean 1: density e^-x. */
  private static final Continuous EXPONENTIAL =
      new Continuous() {
        @Override
        public double below(double x) {
          return -Math.expm1(-x);
        }

        @Override
        public double above(double x) {
          return Math.exp(-x);
        }

        @Override
        public double quantile(double probability) {
          return -Math.log1p(-probability);
        }

        @Override
        public double logDensity(double x) {
          return -x;
        }
      };

  /** Density 2x from 0 to 1. */
  private static final Continuous RISING =
      new Continuous() {
        @Override
        public double below(double x) {
          return x * x;
        }

        @Override
        public double above(double x) {
          return 1 - x * x;
        }

        @Override
        public double quantile(double probability) {
          return Math.sqrt(probability);
        }

        @Override
        public double logDensity(double x) {
          return Math.log(x);
        }
      };

  @Test
  void ofANormalIsTheEqualTailedOne() {
    NormalMixture normal = new NormalMixture(new double[] {1}, new double[] {3}, new double[] {2});
    Interval shortest = ShortestInterval.of(normal, 0.95);
    // Abramowitz and Stegun, table 26.5.
    assertEquals(3 - 2 * 1.95996, shortest.lower(), 2e-5);
    assertEquals(3 + 2 * 1.95996, shortest.upper(), 2e-5);
  }

  @Test
  void ofAFallingDensityStartsWithTheSupport() {
    Interval shortest = ShortestInterval.of(EXPONENTIAL, 0.95, 0, Double.POSITIVE_INFINITY);
    assertEquals(0, shortest.lower(), 0);
    assertEquals(Math.log(20), shortest.upper(), 1e-14);
  }

  @Test
  void ofARisingDensityEndsWithTheSupport() {
    Interval shortest = ShortestInterval.of(RISING, 0.95, 0, 1);
    assertEquals(Math.sqrt(0.05), shortest.lower(), 1e-14);
    assertEquals(1, shortest.upper(), 0);
  }

  @Test
  void ofASkewedHumpHasTheSameDensityAtBothEnds() {
    NormalMixture skewed =
        new NormalMixture(new double[] {0.7, 0.3}, new double[] {0, 1.5}, new double[] {1, 2});
    Interval shortest = ShortestInterval.of(skewed, 0.9);
    assertEquals(skewed.logDensity(shortest.lower()), skewed.logDensity(shortest.upper()), 1e-6);
    assertEquals(0.9, skewed.below(shortest.upper()) - skewed.below(shortest.lower()), 1e-10);
  }
}
