package gapwise.synthesis.network.exact;

import static gapwise.synthesis.network.exact.CountedNetworks.comparison;
import static gapwise.synthesis.network.exact.CountedNetworks.network;
import static gapwise.synthesis.network.exact.CountedNetworks.studies;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.effect.Interval;
import gapwise.synthesis.network.NetworkPredictions;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Ten invented studies, two of three arms, with empty cells, worked out again by SciPy 1.17 with
 * every table written down, a dense grid over the differences of studies and a general optimiser:
 * core/src/test/reference/exact_network.py.
 */
class ExactNetworkTest {
  private static final ExactNetwork TEN = network(studies(CountedNetworks.INVENTED), true);

  /** Both searches stop within some 1e-7 of a standard error of about 1. */
  @ParameterizedTest
  @CsvSource({
    "graft, frame, 2.2562745072, 1.1629437235, -0.0340187334, 5.0800743158",
    "nail, frame, 1.0061734338, 0.8320872537, -0.6293917463, 3.0764098625",
    "nail, graft, -1.2501010734, 1.1347447592, -3.8325475202, 1.2377484253",
    "plate, frame, 0.9746890459, 0.9508471845, -1.0230429156, 3.1947012881",
    "plate, graft, -1.2815854613, 1.2299064957, -4.1564406484, 1.2864631624",
    "plate, nail, -0.0314843879, 0.8826971964, -2.1351805273, 1.8457239319"
  })
  void effectsErrorsAndProfileLimitsAreThoseOfEveryTableWrittenDown(
      String one, String other, double estimate, double error, double lower, double upper) {
    ExactComparison found = comparison(TEN, one, other);
    assertEquals(estimate, found.estimate(), 1e-6);
    assertEquals(error, found.standardError(), 1e-6);
    // Integrals have as many points as the top needs, a little fewer than limits would.
    assertEquals(lower, found.interval().lower(), 1e-5);
    assertEquals(upper, found.interval().upper(), 1e-5);
    assertTrue(found.profiled());
  }

  @Test
  void spreadAndLikelihoodAreTheSameToo() {
    assertEquals(1.5629224392, TEN.tau().orElseThrow(), 1e-6);
    assertEquals(-23.1750423277, TEN.logLikelihood(), 1e-7);
    assertTrue(TEN.converged());
    Interval interval = TEN.tauSquaredInterval().orElseThrow();
    assertEquals(0.6112202623, interval.lower(), 1e-5);
    assertEquals(9.7053771361, interval.upper(), 1e-4);
  }

  @Test
  void commonEffectsAreTheTopAtNoSpread() {
    ExactNetwork common = network(studies(CountedNetworks.INVENTED), false);
    assertEquals(1.48905207, comparison(common, "graft", "frame").estimate(), 1e-8);
    assertEquals(0.4528967, comparison(common, "nail", "frame").estimate(), 1e-7);
    assertEquals(0.66431651, comparison(common, "plate", "frame").estimate(), 1e-8);
    assertEquals(-31.4184506399, common.logLikelihood(), 1e-9);
    assertTrue(common.tau().isEmpty());
    assertTrue(common.predictions().isEmpty());
  }

  @Test
  void directAndIndirectAreAFitWithOneEffectMore() {
    ExactSplit split =
        TEN.split(TEN.treatments().indexOf("nail"), TEN.treatments().indexOf("graft"))
            .orElseThrow();
    assertEquals(0.1881207969, split.direct().estimate(), 1e-6);
    assertEquals(1.5536832263, split.direct().standardError(), 1e-5);
    assertEquals(-2.3895033287, split.indirect().estimate(), 1e-6);
    assertEquals(1.4290786693, split.indirect().standardError(), 1e-5);
    assertEquals(2.1109703644, split.difference().standardError(), 1e-5);
    assertEquals(0.2414348140, split.pValue(), 1e-6);
    assertTrue(
        TEN.split(TEN.treatments().indexOf("nail"), TEN.treatments().indexOf("frame")).isEmpty(),
        "a study of three arms holds the pair");
  }

  @Test
  void theOrderOfArmsChangesNothing() {
    List<CountedStudy> turned =
        studies(CountedNetworks.INVENTED).stream()
            .map(
                study ->
                    new CountedStudy(
                        study.label(), reversed(study.treatments()), reversed(study.arms())))
            .toList();
    ExactNetwork other = network(turned, true);
    assertEquals(TEN.logLikelihood(), other.logLikelihood(), 1e-9);
    assertEquals(
        comparison(TEN, "graft", "plate").estimate(),
        comparison(other, "graft", "plate").estimate(),
        1e-7);
  }

  private static <T> List<T> reversed(List<T> list) {
    List<T> turned = new java.util.ArrayList<>(list);
    java.util.Collections.reverse(turned);
    return turned;
  }

  @Test
  void aStudyOfSevenArmsIsTooMuch() {
    StringBuilder rows = new StringBuilder();
    for (int arm = 0; arm < 7; arm++) {
      rows.append(arm == 0 ? "" : "|").append("A t").append(arm).append(" 2 10");
    }
    ExactNetwork.Fitted.Not not =
        assertInstanceOf(
            ExactNetwork.Fitted.Not.class,
            ExactNetwork.of(studies(rows.toString()), "", new ExactSettings(true, 0.95)));
    assertEquals("too-many-arms", not.why().code());
  }

  @Test
  void aStudyOfFourArmsIsIntegratedOver() {
    // Alike in all arms: every effect is 0 and, since studies agree, so is the spread.
    ExactNetwork four =
        network(
            studies("A a 3 20|A b 3 20|A c 3 20|A d 3 20|B a 5 25|B b 5 25|B c 5 25|B d 5 25"),
            true);
    assertEquals(0, comparison(four, "d", "a").estimate(), 1e-7);
    assertEquals(0, four.tau().orElseThrow(), 1e-9);
  }

  @Test
  void eventsWhollyAtOneSideInEveryStudyTellNoSpread() {
    List<CountedStudy> sided = studies("A a 0 10|A b 3 10|B a 4 10|B b 0 10|C a 0 9|C b 2 11");
    ExactNetwork.Fitted.Not not =
        assertInstanceOf(
            ExactNetwork.Fitted.Not.class,
            ExactNetwork.of(sided, "", new ExactSettings(true, 0.95)));
    assertEquals("estimate-at-limit", not.why().code());
    assertTrue(comparison(network(sided, false), "b", "a").standardError() > 0);
  }

  /** What values of tau weigh by, up to where the script's grid is fine enough. */
  @ParameterizedTest
  @CsvSource({"1.5, -23.652725", "3, -23.623515"})
  void aSpreadWeighsByItsLikelihoodWithTheEffectsIntegratedOut(double tau, double log) {
    List<CountedStudy> ten = studies(CountedNetworks.INVENTED);
    ExactFit fit = ExactFit.of(Pieces.of(ten, "").likelihood(ten), true).orElseThrow();
    // Splines through fits at some twenty values are good to 1e-3 and better.
    assertEquals(log, new Further(fit, 6).log(tau), 1e-3);
  }

  @Test
  void aFurtherStudyIsLessSureThanTheMean() {
    NetworkPredictions further = TEN.predictions().orElseThrow();
    int graft = TEN.treatments().indexOf("graft");
    Interval interval = further.of(graft, 0);
    assertTrue(interval.lower() < -0.034 && interval.upper() > 5.08);
    assertEquals(interval.lower(), -further.of(0, graft).upper(), 1e-4);
  }
}
