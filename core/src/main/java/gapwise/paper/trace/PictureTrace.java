package gapwise.paper.trace;

import gapwise.budget.Work;
import gapwise.paper.Box;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.Picture;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;

/**
 * Follows a line in a picture of a page from a place that a person points at. For figures that a
 * page holds as a picture only; what comes out is a proposal like any other.
 *
 * <p>Pixels of nearly the colour pointed at are the line. It is followed pixel column by pixel
 * column to both sides; a column that is much taller than the line is a drop or a mark across it
 * and gives no point of its own.
 */
public final class PictureTrace {
  /** Colours that differ by so much in each part are one, smoothed edges among them. */
  private static final int SAME_COLOUR = 70;

  /** A line may be broken by so many pixel columns, as dashes are, in parts of an inch. */
  private static final double LONGEST_GAP = 0.12;

  /** How far beside the line a person may point, in parts of an inch. */
  private static final double MISS = 0.06;

  /** How broad a line across this one may be, in parts of an inch. */
  private static final double ACROSS = 0.035;

  private static final double POINTS_PER_INCH = 72;

  private final BufferedImage image;
  private final double scale;
  private final int left;
  private final int right;
  private final int top;
  private final int bottom;
  private final int colour;

  private PictureTrace(BufferedImage image, double scale, Box plot, int colour) {
    this.image = image;
    this.scale = scale;
    this.left = Math.max(0, (int) Math.floor(plot.left() * scale));
    this.right = Math.min(image.getWidth() - 1, (int) Math.ceil(plot.right() * scale));
    this.top = Math.max(0, (int) Math.floor(plot.top() * scale));
    this.bottom = Math.min(image.getHeight() - 1, (int) Math.ceil(plot.bottom() * scale));
    this.colour = colour;
  }

  /**
   * Points along a line, points from the top left corner of the page, from left to right.
   *
   * @param picture of the whole page
   * @param plot the area of the figure within its axes
   * @param at a place on the line
   * @return empty where no line is near the place
   * @throws IOException if the picture cannot be read
   */
  public static List<Point> follow(Picture picture, Box plot, Point at) throws IOException {
    double scale = picture.dotsPerInch() / POINTS_PER_INCH;
    BufferedImage image;
    try (InputStream png = picture.png()) {
      image = ImageIO.read(png);
    }
    if (image == null) {
      throw new IOException("the picture of the page is no picture");
    }
    int[] start = darkest(image, at, scale, picture.dotsPerInch() * MISS);
    if (start.length == 0) {
      return List.of();
    }
    PictureTrace trace = new PictureTrace(image, scale, plot, image.getRGB(start[0], start[1]));
    return trace.follow(start[0], start[1]);
  }

  /** The pixel near a place that differs most from white; none if all is nearly white. */
  private static int[] darkest(BufferedImage image, Point at, double scale, double miss) {
    int[] best = {};
    int most = 90;
    int reach = (int) Math.ceil(miss);
    int middleX = (int) Math.round(at.x() * scale);
    int middleY = (int) Math.round(at.y() * scale);
    for (int x = Math.max(0, middleX - reach);
        x <= Math.min(image.getWidth() - 1, middleX + reach);
        x++) {
      for (int y = Math.max(0, middleY - reach);
          y <= Math.min(image.getHeight() - 1, middleY + reach);
          y++) {
        int rgb = image.getRGB(x, y);
        int ink = 255 - Math.min(rgb >> 16 & 255, Math.min(rgb >> 8 & 255, rgb & 255));
        if (ink > most) {
          most = ink;
          best = new int[] {x, y};
        }
      }
    }
    return best;
  }

  /** A run of pixels of the line in one column. */
  private record Run(int column, int from, int to) {
    int height() {
      return to - from + 1;
    }
  }

  private List<Point> follow(int x, int y) {
    if (x < left || x > right || y < top || y > bottom) {
      return List.of();
    }
    List<Run> runs = new ArrayList<>();
    Run start = run(x, y, y);
    runs.add(start);
    walk(start, 1, runs);
    List<Run> before = new ArrayList<>();
    walk(start, -1, before);
    for (Run run : before) {
      runs.add(0, run);
    }
    return points(runs);
  }

  private void walk(Run start, int step, List<Run> runs) {
    Run last = start;
    int gap = 0;
    int longest = (int) Math.ceil(LONGEST_GAP * scale * POINTS_PER_INCH);
    for (int x = start.column() + step; x >= left && x <= right; x += step) {
      Work.check();
      Run next = next(last, x, step, gap);
      if (next.height() > 0) {
        runs.add(next);
        last = next;
        gap = 0;
      } else if (++gap > longest) {
        return;
      }
    }
  }

  /**
   * The run of the next column that touches the last one. To the right a survival curve falls and a
   * drop is left at its lower end, to the left at its upper; so among several the lowest or highest
   * counts.
   */
  private Run next(Run last, int x, int step, int gap) {
    int reach = 1 + Math.min(gap, 2);
    int from = Math.max(top, last.from() - reach);
    int to = Math.min(bottom, last.to() + reach);
    Run found = new Run(x, 0, -1);
    for (int y = from; y <= to; y++) {
      if (isLine(x, y)) {
        Run run = run(x, y, y);
        boolean better =
            found.height() <= 0 || (step > 0 ? run.to() > found.to() : run.from() < found.from());
        found = better ? run : found;
        y = run.to();
      }
    }
    return found;
  }

  private Run run(int x, int y1, int y2) {
    int from = y1;
    int to = y2;
    for (int up = ahead(x, from, -1); up > 0; up = ahead(x, from, -1)) {
      from -= up;
    }
    for (int down = ahead(x, to, 1); down > 0; down = ahead(x, to, 1)) {
      to += down;
    }
    return new Run(x, from, to);
  }

  /** How far on the line goes on, over the breadth of another line across it; 0 if it ends. */
  private int ahead(int x, int y, int step) {
    int most = (int) Math.ceil(ACROSS * scale * POINTS_PER_INCH);
    for (int i = 1; i <= most; i++) {
      int next = y + i * step;
      if (next >= top && next <= bottom && isLine(x, next)) {
        return i;
      }
    }
    return 0;
  }

  private boolean isLine(int x, int y) {
    int rgb = image.getRGB(x, y);
    return Math.abs((rgb >> 16 & 255) - (colour >> 16 & 255)) < SAME_COLOUR
        && Math.abs((rgb >> 8 & 255) - (colour >> 8 & 255)) < SAME_COLOUR
        && Math.abs((rgb & 255) - (colour & 255)) < SAME_COLOUR;
  }

  private List<Point> points(List<Run> runs) {
    int[] heights = runs.stream().mapToInt(Run::height).sorted().toArray();
    int usual = heights[heights.length / 2];
    List<Point> points = new ArrayList<>();
    for (Run run : runs) {
      if (run.height() <= usual + 1) {
        points.add(
            new Point((run.column() + 0.5) / scale, ((run.from() + run.to()) / 2.0 + 0.5) / scale));
      }
    }
    return points;
  }
}
