package gapwise.figure.array;

import static gapwise.figure.drawing.Svg.at;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Svg;
import gapwise.figure.value.Estimate;

/** Draws what a treatment takes: operations as ticks, the frame as a bar, walking as a foot. */
public final class StripDrawing {
  /** Width of every strip. */
  public static final double WIDTH = 168;

  /** Height of every strip. */
  public static final double HEIGHT = 50;

  private static final double AXIS = 34;
  private static final double START = 24;
  private static final double END = WIDTH - 16;
  private static final double FRAME_TOP = 4;
  private static final double FRAME_HEIGHT = 8;
  private static final double BOOT = 13;
  private static final double BAND = 4;
  private static final double BETWEEN_TICKS = 5;
  private static final double MONTHS_BETWEEN_WORDS = 6;
  private static final int MOST_WORDS = 5;
  private static final Lettering SMALL = Lettering.plain(12).in(Ink.SOFT);

  private final StageStrip strip;
  private final Svg svg = new Svg();

  private StripDrawing(StageStrip strip) {
    this.strip = strip;
  }

  /**
   * Draws one strip.
   *
   * @param title the same in words
   */
  public static Picture draw(StageStrip strip, String title) {
    return new StripDrawing(strip).draw(title);
  }

  private Picture draw(String title) {
    svg.begin(WIDTH, HEIGHT, "px", "img", title);
    axis();
    for (int i = 0; i < strip.operations(); i++) {
      double x = START - i * BETWEEN_TICKS;
      svg.line(x, FRAME_TOP - 2, x, AXIS, Ink.INK, 2);
    }
    strip.frame().ifPresent(this::frame);
    strip.walking().ifPresent(this::walking);
    return new Picture(svg.end(), WIDTH, HEIGHT);
  }

  private double x(double months) {
    return START + (END - START) * months / strip.axisMonths();
  }

  private void axis() {
    svg.line(START, AXIS, END, AXIS, Ink.SOFT, 0.9);
    double step = MONTHS_BETWEEN_WORDS;
    while (strip.axisMonths() / step > MOST_WORDS) {
      step *= 2;
    }
    for (double month = 0; month <= strip.axisMonths() + 1e-9; month += step) {
      svg.line(x(month), AXIS, x(month), AXIS + 3, Ink.SOFT, 0.9);
      svg.text(x(month), AXIS + 14, Svg.Anchor.MIDDLE, SMALL, Svg.n(month));
    }
  }

  private void frame(Estimate months) {
    double sure = x(months.lower());
    svg.rect(START + 1.5, FRAME_TOP, Math.max(0, sure - START - 1.5), FRAME_HEIGHT, Ink.INK);
    hatched(months, FRAME_TOP, FRAME_HEIGHT);
    svg.line(
        x(months.value()),
        FRAME_TOP - 2,
        x(months.value()),
        FRAME_TOP + FRAME_HEIGHT + 2,
        Ink.ACCENT,
        1.6);
  }

  private void walking(Estimate months) {
    hatched(months, AXIS - BAND, BAND);
    foot(x(months.value()));
  }

  /** From the lower to the upper limit. */
  private void hatched(Estimate months, double top, double height) {
    double from = x(Math.max(0, months.lower()));
    double to = x(months.upper());
    if (to - from < 1) {
      return;
    }
    svg.shape(
        "M" + at(from, top) + "H" + Svg.n(to) + "V" + Svg.n(top + height) + "H" + Svg.n(from) + "Z",
        "none",
        Ink.SOFT,
        0.7,
        "");
    StringBuilder strokes = new StringBuilder();
    for (double x = from + 2; x < to; x += 3) {
      double rise = Math.min(height, to - x);
      strokes.append("M").append(at(x, top + height)).append("L");
      strokes.append(at(x + rise, top + height - rise));
    }
    svg.stroke(strokes.toString(), Ink.SOFT, 0.7);
  }

  /** A boot that stands on the axis with its heel over the month. */
  private void foot(double x) {
    double sole = AXIS - BAND - 1;
    svg.path(
        "M"
            + at(x - 3, sole)
            + "V"
            + Svg.n(sole - BOOT)
            + "H"
            + Svg.n(x + 4)
            + "V"
            + Svg.n(sole - 6.5)
            + "Q"
            + at(x + 12, sole - 6)
            + " "
            + at(x + 12, sole)
            + "Z",
        Ink.INK);
    svg.line(x, sole, x, AXIS, Ink.INK, 1.4);
  }
}
