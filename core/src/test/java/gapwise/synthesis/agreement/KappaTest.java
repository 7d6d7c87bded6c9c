package gapwise.synthesis.agreement;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.synthesis.agreement.Kappa.Pair;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class KappaTest {
  /** Two judges, 200 cases: Cohen, Psychol Bull 1968;70:213, the table of his example. */
  private static final double[][] COHEN = {{88, 14, 18}, {10, 40, 10}, {2, 6, 12}};

  /** His weights of disagreement for it. */
  private static final double[][] DISAGREEMENT = {{0, 1, 3}, {1, 0, 6}, {3, 6, 0}};

  private static List<Pair> pairs(double[][] table) {
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < table.length; i++) {
      for (int j = 0; j < table.length; j++) {
        if (table[i][j] > 0) {
          pairs.add(new Pair(i, j, table[i][j]));
        }
      }
    }
    return pairs;
  }

  private static double equal(int i, int j) {
    return i == j ? 1 : 0;
  }

  @Test
  void ofCohensTableIsAsPrinted() {
    // 0.492 in Cohen 1968. By hand: 140 of 200 agree, by chance 82 of 200 do, and 58/118 is it.
    Kappa kappa = Kappa.of(3, pairs(COHEN), KappaTest::equal).orElseThrow();
    assertEquals(0.492, kappa.estimate(), 5e-4);
    assertEquals(58.0 / 118, kappa.estimate(), 1e-14);
  }

  @Test
  void weightedByCohensDisagreementIsAsPrinted() {
    // 0.348 in Cohen 1968. By hand: 0.9 of disagreement found over 1.38 by chance, 1 less 15/23.
    Kappa kappa = Kappa.of(3, pairs(COHEN), (i, j) -> 1 - DISAGREEMENT[i][j] / 6).orElseThrow();
    assertEquals(0.348, kappa.estimate(), 5e-4);
    assertEquals(8.0 / 23, kappa.estimate(), 1e-14);
  }

  /**
   * By the delta method in {@code small_rooms.py} of the reference scripts, slopes by differences.
   */
  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "none,      0.491525424, 0.0510018, 0.0519789",
    "linear,    0.473684211, 0.0544323, 0.0546963",
    "quadratic, 0.454545455, 0.0664537, 0.0673587"
  })
  void hasTheStandardErrorsOfTheDeltaMethod(
      String weights, double estimate, double error, double underZero) {
    Kappa.Weights agreement =
        switch (weights) {
          case "linear" -> (i, j) -> 1 - Math.abs(i - j) / 2.0;
          case "quadratic" -> (i, j) -> 1 - (i - j) * (i - j) / 4.0;
          default -> KappaTest::equal;
        };
    Kappa kappa = Kappa.of(3, pairs(COHEN), agreement).orElseThrow();
    assertEquals(estimate, kappa.estimate(), 5e-10);
    assertEquals(error, kappa.standardError(), 5e-8);
    assertEquals(underZero, kappa.standardErrorUnderZero(), 5e-8);
  }

  @Test
  void ofTwoByTwoHasTheStandardErrorsInClosedForm() {
    // With all margins a half and agreement p: kappa = 2p - 1. Fleiss, Cohen and Everitt 1969 come
    // to se^2 = 4p(1 - p)/n, which is the binomial error of 2p, and to 1/n where p is a half.
    Kappa kappa =
        Kappa.of(2, pairs(new double[][] {{40, 10}, {10, 40}}), KappaTest::equal).orElseThrow();
    assertEquals(0.6, kappa.estimate(), 1e-14);
    assertEquals(2 * Math.sqrt(0.8 * 0.2 / 100), kappa.standardError(), 1e-14);
    assertEquals(Math.sqrt(1 / 100.0), kappa.standardErrorUnderZero(), 1e-14);
  }

  @Test
  void withQuadraticWeightsIsTheCorrelationWhereMarginsAreEqual() {
    // With equal means and variances of both raters it is Pearson's r: Fleiss and Cohen, Educ
    // Psychol Meas 1973;33:613. Scores less their mean are -1, 0, 1: products sum to 8 + 8, squares
    // of either rater to 10 + 10.
    double[][] table = {{8, 2, 0}, {2, 6, 2}, {0, 2, 8}};
    Kappa kappa = Kappa.of(3, pairs(table), (i, j) -> 1 - (i - j) * (i - j) / 4.0).orElseThrow();
    assertEquals(16.0 / 20, kappa.estimate(), 1e-14);
  }

  @Test
  void doesNotChangeWhenRatersChangePlaces() {
    List<Pair> turned =
        pairs(COHEN).stream()
            .map(p -> new Pair(/* first= */ p.second(), /* second= */ p.first(), p.count()))
            .toList();
    Kappa one = Kappa.of(3, pairs(COHEN), KappaTest::equal).orElseThrow();
    Kappa other = Kappa.of(3, turned, KappaTest::equal).orElseThrow();
    assertEquals(one.estimate(), other.estimate(), 1e-15);
    assertEquals(one.standardError(), other.standardError(), 1e-15);
  }

  @Test
  void hasHalfTheErrorWithFourTimesTheCases() {
    List<Pair> four =
        pairs(COHEN).stream().map(p -> new Pair(p.first(), p.second(), 4 * p.count())).toList();
    Kappa one = Kappa.of(3, pairs(COHEN), KappaTest::equal).orElseThrow();
    Kappa other = Kappa.of(3, four, KappaTest::equal).orElseThrow();
    assertEquals(one.standardError() / 2, other.standardError(), 1e-15);
    assertEquals(one.standardErrorUnderZero() / 2, other.standardErrorUnderZero(), 1e-15);
  }

  @Test
  void isNothingWhereBothRatersUseOneCategory() {
    assertEquals(Optional.empty(), Kappa.of(2, List.of(new Pair(0, 0, 9)), KappaTest::equal));
  }

  @Test
  void isNothingWithoutCases() {
    assertEquals(Optional.empty(), Kappa.of(2, List.of(), KappaTest::equal));
  }
}
