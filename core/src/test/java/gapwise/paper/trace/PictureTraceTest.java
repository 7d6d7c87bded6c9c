package gapwise.paper.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.paper.Box;
import gapwise.paper.Drawn;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.Opened;
import gapwise.paper.Paper;
import gapwise.paper.Picture;
import gapwise.paper.trace.Axis.Mark;
import java.awt.Color;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Curves in a picture of a page, against the curves that were drawn. */
class PictureTraceTest {
  @TempDir Path folder;

  private static final Axes AXES =
      Axes.of(
          new Axis(
              Scale.LINEAR, new Mark(new Point(100, 300), 0), new Mark(new Point(400, 300), 30)),
          new Axis(
              Scale.PERCENT, new Mark(new Point(100, 300), 0), new Mark(new Point(100, 100), 100)));

  private Picture picture() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.content().setLineWidth(1.2f);
      drawn.line(100, 300, 400, 300);
      drawn.line(100, 100, 100, 300);
      drawn.content().setStrokingColor(new Color(200, 30, 30));
      drawn.path(100, 100, 160, 100, 160, 130, 230, 130, 230, 200, 330, 200, 330, 240, 400, 240);
      drawn.line(280, 196, 280, 204);
      drawn.content().setStrokingColor(new Color(20, 20, 200));
      drawn.path(100, 100, 130, 100, 130, 180, 300, 180, 300, 260, 380, 260);
      try (Paper paper = ((Opened) Paper.open(drawn.save(folder))).paper()) {
        return (Picture) paper.picture(1, 200);
      }
    }
  }

  private static void near(double[][] expected, List<Point> points, double end) {
    Steps steps = ((Steps.Found) Steps.of(AXES.rows(points))).steps();
    for (double time = 0.5; time < end; time += 0.25) {
      double height = 1;
      boolean atStep = false;
      for (double[] step : expected) {
        height = step[0] <= time ? step[1] : height;
        atStep |= Math.abs(step[0] - time) < 0.3;
      }
      if (!atStep) {
        assertEquals(height, steps.at(time), 0.01, "at " + time);
      }
    }
  }

  @Test
  void eachColourIsFollowedByItself() throws IOException {
    Box plot = new Box(101, 90, 400, 299);
    List<Point> red = PictureTrace.follow(picture(), plot, new Point(200, 131));
    near(new double[][] {{6, 0.85}, {13, 0.5}, {23, 0.3}}, red, 29);
    List<Point> blue = PictureTrace.follow(picture(), plot, new Point(350, 259));
    near(new double[][] {{3, 0.6}, {20, 0.2}}, blue, 27);
  }

  @Test
  void whereNoLineIsNothingIsFollowed() throws IOException {
    Box plot = new Box(101, 90, 400, 299);
    assertTrue(PictureTrace.follow(picture(), plot, new Point(380, 120)).isEmpty());
    assertTrue(PictureTrace.follow(picture(), plot, new Point(900, -50)).isEmpty());
  }
}
