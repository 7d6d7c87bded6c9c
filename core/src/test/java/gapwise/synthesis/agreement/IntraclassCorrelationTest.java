package gapwise.synthesis.agreement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.effect.Interval;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class IntraclassCorrelationTest {
  /** Six subjects, four raters: Shrout and Fleiss, Psychol Bull 1979;86:420, table 2. */
  private static final List<List<Double>> RATINGS =
      List.of(
          List.of(9.0, 2.0, 5.0, 8.0),
          List.of(6.0, 1.0, 3.0, 2.0),
          List.of(8.0, 4.0, 6.0, 8.0),
          List.of(7.0, 1.0, 2.0, 6.0),
          List.of(10.0, 5.0, 6.0, 9.0),
          List.of(6.0, 2.0, 4.0, 7.0));

  private static IntraclassCorrelation.Form form(IntraclassCorrelation all, String name) {
    return all.forms().stream().filter(f -> f.name().equals(name)).findFirst().orElseThrow();
  }

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource({
    "one-way-single, 0.17",
    "two-way-random-single, 0.29",
    "two-way-fixed-single, 0.71",
    "one-way-mean, 0.44",
    "two-way-random-mean, 0.62",
    "two-way-fixed-mean, 0.91"
  })
  void isAsPrintedInTableFourOfShroutAndFleiss(String name, double printed) {
    IntraclassCorrelation found = IntraclassCorrelation.of(RATINGS, 0.95);
    assertEquals(printed, form(found, name).estimate(), 5e-3);
  }

  @Test
  void hasTheMeanSquaresOfTableThreeOfShroutAndFleiss() {
    IntraclassCorrelation found = IntraclassCorrelation.of(RATINGS, 0.95);
    assertEquals(11.24, found.betweenSubjects(), 5e-3);
    assertEquals(6.26, found.withinSubjects(), 5e-3);
    assertEquals(32.49, found.betweenRaters(), 5e-3);
    assertEquals(1.02, found.residual(), 5e-3);
  }

  /** By {@code small_rooms.py} of the reference scripts, points of F by SciPy. */
  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "one-way-single, -0.132932325, 0.722560062",
    "two-way-fixed-single, 0.342464765, 0.945858260",
    "two-way-random-single, 0.018786513, 0.761084370"
  })
  void hasTheLimitsThatFGives(String name, double lower, double upper) {
    IntraclassCorrelation.Form found = form(IntraclassCorrelation.of(RATINGS, 0.95), name);
    assertEquals(lower, found.limits().orElseThrow().lower(), 5e-10);
    assertEquals(upper, found.limits().orElseThrow().upper(), 5e-10);
  }

  @Test
  void ofMeansIsThatOfSingleRatersStretchedBySpearmanAndBrown() {
    // k rho/(1 + (k - 1) rho), estimate and limits alike.
    IntraclassCorrelation found = IntraclassCorrelation.of(RATINGS, 0.95);
    for (String kind : List.of("one-way", "two-way-random", "two-way-fixed")) {
      Interval single = form(found, kind + "-single").limits().orElseThrow();
      Interval mean = form(found, kind + "-mean").limits().orElseThrow();
      assertEquals(4 * single.lower() / (1 + 3 * single.lower()), mean.lower(), 1e-14, kind);
      assertEquals(4 * single.upper() / (1 + 3 * single.upper()), mean.upper(), 1e-14, kind);
    }
  }

  @Test
  void ofFixedRatersHasLimitsThatHoldTheFOfTheTable() {
    // The limits turn rho into F by (1 + (k - 1) rho)/(1 - rho); F = BMS/EMS lies between them.
    IntraclassCorrelation found = IntraclassCorrelation.of(RATINGS, 0.95);
    Interval limits = form(found, "two-way-fixed-single").limits().orElseThrow();
    double low = (1 + 3 * limits.lower()) / (1 - limits.lower());
    double high = (1 + 3 * limits.upper()) / (1 - limits.upper());
    // 97.5 % points of F on 5 and 15, and on 15 and 5, degrees of freedom: 3.576 and 6.428 in the
    // printed tables of F (recalled), as SciPy 1.10 has them too.
    double f = found.betweenSubjects() / found.residual();
    assertEquals(3.576, f / low, 5e-4);
    assertEquals(6.428, high / f, 5e-4);
  }

  @Test
  void ofFixedRatersDoesNotChangeWhenARaterAlwaysGivesMore() {
    List<List<Double>> lenient =
        RATINGS.stream().map(r -> List.of(r.get(0) + 50, r.get(1), r.get(2), r.get(3))).toList();
    IntraclassCorrelation one = IntraclassCorrelation.of(RATINGS, 0.95);
    IntraclassCorrelation other = IntraclassCorrelation.of(lenient, 0.95);
    assertEquals(
        form(one, "two-way-fixed-single").estimate(),
        form(other, "two-way-fixed-single").estimate(),
        1e-12);
    // Where agreement is asked for, it does count.
    assertTrue(
        form(other, "two-way-random-single").estimate()
            < form(one, "two-way-random-single").estimate() / 5);
  }

  @Test
  void doesNotChangeWithTheUnit() {
    List<List<Double>> other =
        RATINGS.stream().map(row -> row.stream().map(x -> 32 + 1.8 * x).toList()).toList();
    List<IntraclassCorrelation.Form> forms = IntraclassCorrelation.of(other, 0.95).forms();
    for (IntraclassCorrelation.Form form : IntraclassCorrelation.of(RATINGS, 0.95).forms()) {
      IntraclassCorrelation.Form turned =
          forms.stream().filter(f -> f.name().equals(form.name())).findFirst().orElseThrow();
      assertEquals(form.estimate(), turned.estimate(), 1e-12, form.name());
    }
  }

  @Test
  void ofRatersWhoDifferByNothingIsOneWithoutLimitsOfTheRandomForm() {
    List<List<Double>> same = List.of(List.of(1.0, 1.0), List.of(2.0, 2.0), List.of(4.0, 4.0));
    IntraclassCorrelation found = IntraclassCorrelation.of(same, 0.95);
    assertEquals(1, form(found, "two-way-random-single").estimate(), 1e-12);
    assertTrue(form(found, "two-way-random-single").limits().isEmpty());
  }

  @Test
  void ofSubjectsWhoAllGotTheSameHasNoForm() {
    List<List<Double>> level = List.of(List.of(3.0, 3.0), List.of(3.0, 3.0));
    assertEquals(List.of(), IntraclassCorrelation.of(level, 0.95).forms());
  }

  /** A third of a number is none exactly, so that sums of three raters' leave rounding behind. */
  @Test
  void ofThreeRatersWhoAllSaidTheSameHasNoFormEither() {
    IntraclassCorrelation found =
        IntraclassCorrelation.of(
            List.of(List.of(6.1, 6.1, 6.1), List.of(6.1, 6.1, 6.1), List.of(6.1, 6.1, 6.1)), 0.95);
    assertEquals(List.of(), found.forms());
    assertEquals(0, found.betweenSubjects());
    assertEquals(0, found.residual());
  }
}
