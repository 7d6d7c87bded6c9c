package gapwise.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Phase;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Quartiles against {@code numpy.quantile} of NumPy, whose default is the same definition. */
class UsualCoursesTest {
  @TempDir private Path home;

  private static Optional<Method> method(String code) {
    return Optional.of(Method.of(code));
  }

  @Test
  void theMiddleHalfOfTheAveragesIsToldWithTheMomentTheyCountFrom() {
    try (InventedSeries series = InventedSeries.open(home)) {
      UsualCourse transport = series.usual().of(method("bone-transport"));
      assertEquals(List.of(Milestone.UNION), transport.milestones());
      // quantile of the thirteen averages of the series: 6.9 and 10.5
      String hint = transport.hint(Milestone.UNION).orElseThrow();
      assertTrue(hint.contains("6.9 to 10.5 months"), hint);
      assertTrue(hint.contains("13 series"), hint);
      assertTrue(hint.contains("counted from: frame put on"), hint);
      // quantile of 7, 8, 9 and 10: 7.75 and 9.25
      String membrane =
          series.usual().of(method("induced-membrane")).hint(Milestone.UNION).orElseThrow();
      assertTrue(membrane.contains("7.8 to 9.3 months"), membrane);
      assertTrue(membrane.contains("counted from: grafting or second stage"), membrane);
    }
  }

  @Test
  void fewSeriesAreToldWholeAndNeverAsUsual() {
    try (InventedSeries series = InventedSeries.open(home)) {
      String two = series.usual().of(method("autograft")).hint(Milestone.UNION).orElseThrow();
      assertTrue(two.contains("9 to 11 months on average in 2 series"), two);
      String one = series.usual().of(method("allograft")).hint(Milestone.UNION).orElseThrow();
      assertTrue(one.contains("about 8 months in 1 series"), one);
    }
  }

  @Test
  void aMethodWithoutSeriesIsOfferedCommonMilestonesWithoutHints() {
    try (InventedSeries series = InventedSeries.open(home)) {
      UsualCourse none = series.usual().of(method("arthrodesis"));
      assertEquals(List.of(Milestone.FULL, Milestone.END), none.milestones());
      assertTrue(none.milestoneHints().isEmpty() && none.phaseHints().isEmpty(), none::toString);
      assertEquals(
          List.of(Phase.NO_WEIGHT_BEARING, Phase.PARTIAL_WEIGHT_BEARING, Phase.UNSUPPORTED),
          none.phases());
      UsualCourses usual = series.usual();
      assertSame(usual.of(Optional.empty()), usual.of(Optional.empty()));
    }
  }

  @Test
  void partsOfTheFrameTimeAreOfferedAndNotTheWholeBesideThem() {
    try (InventedSeries series = InventedSeries.withPhases(home)) {
      UsualCourse transport = series.usual().of(method("bone-transport"));
      assertEquals(List.of(Phase.DISTRACTION, Phase.CONSOLIDATION), transport.phases());
      assertEquals(
          "Reported: 2 to 3 months on average in 2 series.",
          transport.hint(Phase.DISTRACTION).orElseThrow());
      assertEquals(
          "Reported: 9 to 11 months on average in 3 series.",
          transport.hint(Phase.IN_FRAME).orElseThrow());
    }
  }
}
