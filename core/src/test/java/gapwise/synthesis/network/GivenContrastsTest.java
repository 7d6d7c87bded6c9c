package gapwise.synthesis.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import gapwise.synthesis.network.GivenContrasts.Contrast;
import java.util.List;
import org.junit.jupiter.api.Test;

class GivenContrastsTest {
  private static NetworkStudy study(Contrast... contrasts) {
    return assertInstanceOf(
            GivenContrasts.Study.class, GivenContrasts.read("s", List.of(contrasts)))
        .study();
  }

  private static String wrong(Contrast... contrasts) {
    return assertInstanceOf(
            GivenContrasts.Wrong.class, GivenContrasts.read("s", List.of(contrasts)))
        .code();
  }

  @Test
  void ofIndependentArmsHaveTheFirstArmsVarianceInCommon() {
    // Ruecker, Res Synth Methods 2012;3:312. Arms with variances 1, 2, 4: differences 3, 5 and 6.
    NetworkStudy study =
        study(
            new Contrast("b", "a", 10, 3),
            new Contrast("c", "a", 30, 5),
            new Contrast("c", "b", 20, 6));
    assertEquals(List.of("a", "b", "c"), study.treatments());
    assertEquals(List.of(List.of(3.0, 1.0), List.of(1.0, 5.0)), study.covariance());
    assertEquals(List.of(10.0, 30.0), study.effects());
  }

  @Test
  void giveBackTheVarianceOfTheContrastThatIsNoParameter() {
    NetworkStudy study =
        study(
            new Contrast("b", "a", 10, 3),
            new Contrast("c", "a", 30, 5),
            new Contrast("c", "b", 20, 6));
    assertEquals(6, study.variance(1, 2), 1e-15);
    assertEquals(20, study.effects().get(1) - study.effects().get(0), 1e-15);
  }

  @Test
  void spreadWhatRoundingLeftEvenly() {
    // Going round they miss 0 by 0.03; each takes 0.01 of it.
    NetworkStudy study =
        study(
            new Contrast("b", "a", 1.00, 3),
            new Contrast("c", "a", 3.03, 5),
            new Contrast("c", "b", 2.00, 6));
    assertEquals(1.01, study.effects().get(0), 1e-14);
    assertEquals(3.02, study.effects().get(1), 1e-14);
  }

  @Test
  void thatDoNotAddUpAreRefused() {
    assertEquals(
        "inconsistent-contrasts",
        wrong(
            new Contrast("b", "a", 1, 3),
            new Contrast("c", "a", 5, 5),
            new Contrast("c", "b", 2, 6)));
  }

  @Test
  void withVariancesNoStudyCanHaveAreRefused() {
    // Root 100 is more than root 1 + root 1: no three points are so far apart.
    assertEquals(
        "inconsistent-contrasts",
        wrong(
            new Contrast("b", "a", 0, 1),
            new Contrast("c", "a", 0, 1),
            new Contrast("c", "b", 0, 100)));
  }

  @Test
  void ofThreeTreatmentsAreThree() {
    assertEquals(
        "contrast-missing", wrong(new Contrast("b", "a", 1, 3), new Contrast("c", "a", 3, 5)));
  }

  @Test
  void standOnceEach() {
    assertEquals(
        "contrast-twice", wrong(new Contrast("b", "a", 1, 3), new Contrast("a", "b", -1, 3)));
  }
}
