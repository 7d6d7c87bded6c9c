package gapwise.synthesis.agreement;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.synthesis.agreement.Kappa.Pair;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Tables of which a whole copy would not fit: what they come to follows from their pattern. */
class KappaOfManyCategoriesTest {
  private static final int CATEGORIES = 6_000;

  private static List<Pair> each(java.util.function.IntUnaryOperator second) {
    return IntStream.range(0, CATEGORIES)
        .mapToObj(i -> new Pair(i, second.applyAsInt(i), 1))
        .toList();
  }

  private static double quadratic(int i, int j) {
    double apart = (i - j) / (CATEGORIES - 1.0);
    return 1 - apart * apart;
  }

  @Test
  void ratersWhoNeverAgreeAndUseEveryCategoryOnceHaveTheLeastKappa() {
    // No agreement, 1/n by chance: kappa = (0 - 1/n)/(1 - 1/n) = -1/(n - 1).
    Kappa kappa =
        Kappa.of(CATEGORIES, each(i -> (i + 1) % CATEGORIES), (i, j) -> i == j ? 1 : 0)
            .orElseThrow();
    assertEquals(-1.0 / (CATEGORIES - 1), kappa.estimate(), 1e-15);
  }

  @Test
  void ratersInOppositeOrderHaveAQuadraticKappaOfMinusOne() {
    // Of distances squared the observed mean is (n^2 - 1)/3, that by chance half of it.
    Kappa kappa =
        Kappa.of(CATEGORIES, each(i -> CATEGORIES - 1 - i), KappaOfManyCategoriesTest::quadratic)
            .orElseThrow();
    assertEquals(-1, kappa.estimate(), 1e-11);
  }

  @Test
  void ratersWhoAlwaysAgreeHaveAKappaOfOneWithoutError() {
    Kappa kappa =
        Kappa.of(CATEGORIES, each(i -> i), KappaOfManyCategoriesTest::quadratic).orElseThrow();
    assertEquals(1, kappa.estimate(), 1e-11);
    assertEquals(0, kappa.standardError(), 1e-6);
  }
}
