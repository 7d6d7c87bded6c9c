package gapwise.desk;

import gapwise.evidence.PageBox;
import gapwise.evidence.Reading;
import gapwise.paper.Box;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.trace.Axes;
import gapwise.paper.trace.Axis;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What a person marked on a figure, so that it can be shown and mended later.
 *
 * @param source the picture that the marks lie on
 * @param x the axis along which time or another cause runs
 * @param y the other axis
 * @param points in the order of marking, points of 1/72 inch from the picture's top left corner
 */
public record FigureMarks(Source source, Axis x, Axis y, List<Point> points) {
  /** A curve or a scatter of one paper has fewer; a cell of a workbook holds that many. */
  public static final int MOST_POINTS = 1_000;

  /** Around the marks, so that the numbers beside the axes stand in the box too, points. */
  private static final double AROUND = 12;

  /** Around the sign of one patient, points. */
  private static final double AROUND_POINT = 4;

  /**
   * A picture: a page of a paper, or a picture that was handed in by itself.
   *
   * @param image whether it was handed in by itself
   * @param file name of the file, see {@link Reading#paper}
   * @param page number of the page, from 1; 1 for a picture by itself
   */
  public record Source(boolean image, String file, int page) {
    public Source {
      if (!Reading.isPaper(file)) {
        throw new IllegalArgumentException("not the name of a file: '" + file + "'");
      }
      if (page < 1 || page > Reading.MOST_PAGES || image && page != 1) {
        throw new IllegalArgumentException("no such page of a picture: " + page);
      }
    }
  }

  public FigureMarks {
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(x, "x");
    Objects.requireNonNull(y, "y");
    points = List.copyOf(points);
    if (points.size() > MOST_POINTS) {
      throw new IllegalArgumentException(
          "a figure has at most " + MOST_POINTS + " points, had " + points.size());
    }
  }

  /**
   * The axes.
   *
   * @throws gapwise.problem.WrongInputException where the marks make none
   */
  public Axes axes() {
    return Axes.of(x, y);
  }

  /** The box of the figure on its page, around all that was marked. */
  public PageBox box() {
    List<Point> all = new ArrayList<>(points);
    all.addAll(List.of(x.first().at(), x.second().at(), y.first().at(), y.second().at()));
    return box(
        Box.around(all.stream().map(p -> new Box(p.x(), p.y(), p.x(), p.y())).toList())
            .grown(AROUND));
  }

  private static PageBox box(Box wide) {
    return new PageBox(
        Math.max(0, wide.left()),
        Math.max(0, wide.top()),
        Math.min(PageBox.LARGEST, Math.max(1, wide.right())),
        Math.min(PageBox.LARGEST, Math.max(1, wide.bottom())));
  }

  /** A small box around one place, in which one point of a scatter stands. */
  static PageBox around(Point place) {
    return box(new Box(place.x(), place.y(), place.x(), place.y()).grown(AROUND_POINT));
  }

  /**
   * The place of the figure, for one column of the template.
   *
   * @param name as the paper calls the figure; empty for nothing
   */
  Reading reading(String column, Optional<String> name) {
    return new Reading(column, source.file(), source.page(), List.of(box()), name.orElse(""));
  }

  /** The marks as JSON text, numbers to a hundredth of a point. */
  public String toJson() {
    return FigureMarksJson.write(this);
  }

  /** Marks out of JSON text; empty for anything that is none. */
  public static Optional<FigureMarks> ofJson(String json) {
    return FigureMarksJson.read(json);
  }
}
