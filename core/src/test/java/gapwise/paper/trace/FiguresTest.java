package gapwise.paper.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.paper.Drawn;
import java.awt.Color;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Figures drawn as lines, against the values that were drawn. */
class FiguresTest {
  private static final double LEFT = 120;
  private static final double RIGHT = 420;
  private static final double TOP = 100;
  private static final double BOTTOM = 300;

  /** Times and shares of two invented curves. */
  private static final double[][] SLOW = {{0, 1}, {3, 0.9}, {8, 0.75}, {14, 0.5}, {20, 0.42}};

  private static final double[][] FAST = {{0, 1}, {1.5, 0.8}, {4, 0.55}, {9, 0.25}, {17, 0.1}};

  @TempDir Path folder;

  private static double x(double months) {
    return LEFT + months / 24 * (RIGHT - LEFT);
  }

  private static double y(double share) {
    return BOTTOM - share * (BOTTOM - TOP);
  }

  private static void axes(Drawn drawn, boolean percent) throws IOException {
    drawn.line(LEFT, BOTTOM, RIGHT, BOTTOM);
    drawn.line(LEFT, TOP, LEFT, BOTTOM);
    for (int i = 0; i <= 4; i++) {
      drawn.line(x(6 * i), BOTTOM, x(6 * i), BOTTOM + 4);
      drawn.middle(x(6 * i), BOTTOM + 14, 8, "" + 6 * i);
      drawn.line(LEFT, y(i / 4.0), LEFT - 4, y(i / 4.0));
      String label = percent ? "" + 25 * i : i == 0 ? "0.0" : i == 4 ? "1.0" : "0." + 25 * i;
      drawn.right(LEFT - 7, y(i / 4.0) + 2.8, 8, label);
    }
    drawn.middle((LEFT + RIGHT) / 2, BOTTOM + 27, 8, "Time since operation (months)");
    drawn.upwards(LEFT - 35, BOTTOM - 60, 8, percent ? "Not healed (%)" : "Share not healed");
  }

  private static double[] steps(double[][] curve, double end, boolean rises) {
    List<Double> places = new ArrayList<>();
    double before = rises ? 0 : 1;
    for (double[] point : curve) {
      double share = rises ? 1 - point[1] : point[1];
      if (point[0] > 0) {
        places.add(x(point[0]));
        places.add(y(before));
      }
      places.add(x(point[0]));
      places.add(y(share));
      before = share;
    }
    places.add(x(end));
    places.add(y(before));
    return places.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private FigureProposal only(Drawn drawn) throws IOException {
    List<FigureProposal> figures = Figures.on(drawn.read(folder, 1));
    assertEquals(1, figures.size());
    return figures.get(0);
  }

  private static void near(double[][] expected, double end, Steps found) {
    for (double time = 0; time < end; time += 0.25) {
      double height = 1;
      boolean atStep = false;
      for (double[] point : expected) {
        height = point[0] <= time ? point[1] : height;
        atStep |= Math.abs(point[0] - time) < 0.02;
      }
      if (!atStep) {
        assertEquals(height, found.at(time), 0.01, "at " + time);
      }
    }
  }

  @Test
  void colouredCurvesAreNamedByTheirColourWithNumbersAtRisk() throws IOException {
    try (Drawn drawn = new Drawn()) {
      axes(drawn, true);
      drawn.content().setStrokingColor(new Color(180, 40, 40));
      drawn.path(steps(SLOW, 24, false));
      drawn.line(x(11), y(0.75) - 3, x(11), y(0.75) + 3);
      drawn.content().setStrokingColor(new Color(30, 60, 190));
      drawn.path(steps(FAST, 22, false));
      drawn.content().setNonStrokingColor(new Color(180, 40, 40));
      drawn.text(330, 190, 8, "Bone transport");
      drawn.content().setNonStrokingColor(new Color(30, 60, 190));
      drawn.text(150, 270, 8, "Cement spacer");
      drawn.content().setNonStrokingColor(Color.BLACK);
      drawn.text(50, 345, 8, "Number at risk");
      String[][] rows = {
        {"Bone transport", "40", "36", "29", "20", "16"},
        {"Cement spacer", "20", "11", "5", "2", "0"}
      };
      for (int i = 0; i < 2; i++) {
        drawn.text(50, 357 + 11 * i, 8, rows[i][0]);
        for (int j = 0; j < 5; j++) {
          drawn.middle(x(6 * j), 357 + 11 * i, 8, rows[i][j + 1]);
        }
      }
      drawn.bold(50, 400, 9, "Figure 2. Healing");
      FigureProposal figure = only(drawn);
      assertEquals("Figure 2. Healing", figure.caption());
      assertEquals("months", figure.unit().orElseThrow());
      assertEquals(Scale.PERCENT, figure.axes().y().scale());
      assertEquals(2, figure.curves().size());
      CurveProposal slow = figure.curves().get(0);
      assertEquals("Bone transport", slow.label());
      near(SLOW, 24, slow.steps());
      assertEquals(1, slow.seenLast().size());
      assertEquals(11, slow.seenLast().get(0), 0.01);
      assertEquals(List.of(40, 36, 29, 20, 16), slow.atRisk().orElseThrow().patients());
      assertEquals(List.of(0.0, 6.0, 12.0, 18.0, 24.0), slow.atRisk().orElseThrow().times());
      CurveProposal fast = figure.curves().get(1);
      assertEquals("Cement spacer", fast.label());
      near(FAST, 22, fast.steps());
    }
  }

  @Test
  void blackCurvesAreNamedByTheSampleInTheKey() throws IOException {
    try (Drawn drawn = new Drawn()) {
      axes(drawn, false);
      drawn.path(steps(SLOW, 24, false));
      drawn.line(300, 112, 324, 112);
      drawn.text(330, 115, 8, "Ring frame");
      drawn.content().setLineDashPattern(new float[] {4, 2}, 0);
      drawn.path(steps(FAST, 22, false));
      drawn.line(300, 124, 324, 124);
      drawn.text(330, 127, 8, "Nail");
      FigureProposal figure = only(drawn);
      assertEquals(Scale.LINEAR, figure.axes().y().scale());
      assertEquals(
          List.of("Ring frame", "Nail"),
          figure.curves().stream().map(CurveProposal::label).toList());
      near(SLOW, 24, figure.curves().get(0).steps());
      near(FAST, 22, figure.curves().get(1).steps());
      assertTrue(figure.curves().get(0).questions().size() >= 2, "asks for numbers at risk");
    }
  }

  @Test
  void aCurveDrawnPieceByPieceIsOneCurve() throws IOException {
    try (Drawn drawn = new Drawn()) {
      axes(drawn, true);
      drawn.content().setStrokingColor(Color.BLUE);
      double[] places = steps(FAST, 22, false);
      for (int i = 0; i + 3 < places.length; i += 2) {
        drawn.line(places[i], places[i + 1], places[i + 2], places[i + 3]);
      }
      FigureProposal figure = only(drawn);
      assertEquals(1, figure.curves().size());
      near(FAST, 22, figure.curves().get(0).steps());
    }
  }

  @Test
  void aBrokenCurveDrawnDashByDashIsOneCurve() throws IOException {
    try (Drawn drawn = new Drawn()) {
      axes(drawn, true);
      double[] places = steps(FAST, 22, false);
      double walked = 0;
      for (int i = 0; i + 3 < places.length; i += 2) {
        double length =
            Math.abs(places[i + 2] - places[i]) + Math.abs(places[i + 3] - places[i + 1]);
        boolean level = places[i + 1] == places[i + 3];
        // Dashes of 5 points with gaps of 3, cut at corners.
        for (double at = 0; at < length; ) {
          double phase = (walked + at) % 8;
          double next = Math.min(length, at + (phase < 5 ? 5 - phase : 8 - phase) + 1e-6);
          if (phase < 5) {
            double sign = level ? 1 : Math.signum(places[i + 3] - places[i + 1]);
            double x1 = places[i] + (level ? at : 0);
            double y1 = places[i + 1] + (level ? 0 : sign * at);
            double x2 = places[i] + (level ? next : 0);
            double y2 = places[i + 1] + (level ? 0 : sign * next);
            drawn.line(x1, y1, x2, y2);
          }
          at = next;
        }
        walked += length;
      }
      FigureProposal figure = only(drawn);
      assertEquals(1, figure.curves().size());
      near(FAST, 21.5, figure.curves().get(0).steps());
    }
  }

  @Test
  void aRisingCurveIsTurnedRoundAndAsked() throws IOException {
    try (Drawn drawn = new Drawn()) {
      axes(drawn, true);
      drawn.content().setStrokingColor(Color.BLUE);
      drawn.path(steps(FAST, 22, true));
      CurveProposal curve = only(drawn).curves().get(0);
      assertTrue(curve.steps().rises());
      near(FAST, 22, curve.steps());
      assertTrue(curve.questions().stream().anyMatch(q -> q.contains("turned round")));
    }
  }

  @Test
  void aScatterGivesItsPointsOnALogarithmicAxis() throws IOException {
    try (Drawn drawn = new Drawn()) {
      for (int i = 0; i <= 3; i++) {
        drawn.middle(LEFT + 100 * i, BOTTOM + 14, 8, "" + (int) Math.pow(10, i));
        drawn.right(LEFT - 7, BOTTOM - 50 * i + 2.8, 8, "" + 4 * i);
      }
      double[][] values = {{3, 2}, {25, 7}, {700, 11}, {100, 1.5}};
      for (double[] value : values) {
        double px = LEFT + 100 * Math.log10(value[0]);
        double py = 842 - (BOTTOM - 12.5 * value[1]);
        drawn.content().addRect((float) px - 2, (float) py - 2, 4, 4);
        drawn.content().fill();
      }
      FigureProposal figure = only(drawn);
      assertEquals(Scale.LOG, figure.axes().x().scale());
      List<DataPoint> points = figure.points().get(0);
      for (int i = 0; i < values.length; i++) {
        assertEquals(1, points.get(i).x() / values[i][0], 0.03);
        assertEquals(values[i][1], points.get(i).y(), 0.05);
      }
      assertTrue(figure.questions().stream().anyMatch(q -> q.contains("logarithmic")));
    }
  }

  @Test
  void numbersThatFitNeitherStepsNorRatiosMakeNoAxis() throws IOException {
    try (Drawn drawn = new Drawn()) {
      int[] odd = {0, 3, 20, 22, 90};
      for (int i = 0; i < odd.length; i++) {
        drawn.middle(LEFT + 70 * i, BOTTOM + 14, 8, "" + odd[i]);
        drawn.right(LEFT - 7, BOTTOM - 45 * i, 8, "" + 25 * i);
      }
      drawn.path(LEFT, TOP, 200, TOP, 200, 200, 300, 200);
      assertEquals(List.of(), Figures.on(drawn.read(folder, 1)));
    }
  }
}
