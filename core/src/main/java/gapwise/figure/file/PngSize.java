package gapwise.figure.file;

import gapwise.figure.drawing.Medium;
import gapwise.figure.value.Check;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * How large a picture is: its width on paper or screen, and dots per inch. A chosen size keeps
 * within bounds that are refused in words.
 *
 * @param widthMillimetres width in millimetres
 * @param dotsPerInch dots per inch, which the file states
 */
public record PngSize(double widthMillimetres, double dotsPerInch) {
  /** Fewer dots per inch than an old screen has blur every letter. */
  static final int FEWEST_DOTS = 72;

  /** More dots than this no press resolves. */
  static final int MOST_DOTS = 1200;

  static final int FEWEST_PIXELS = 200;
  static final int MOST_PIXELS_ACROSS = 12_000;

  /** The long side of A0 (ISO 216), the largest poster. */
  static final int MOST_MILLIMETRES = 1189;

  public PngSize {
    if (!(Check.finite(widthMillimetres, "widthMillimetres") > 0
        && Check.finite(dotsPerInch, "dotsPerInch") > 0)) {
      throw new IllegalArgumentException("no size: " + widthMillimetres + ", " + dotsPerInch);
    }
  }

  /** The size of a medium unless another is asked for. */
  public static PngSize usual(Medium medium) {
    return new PngSize(medium.widthMillimetres(), medium.usualDotsPerInch());
  }

  /**
   * The size that a person asks for; what is left out follows from the medium.
   *
   * @param millimetres width in millimetres
   * @param pixels width in pixels; not beside millimetres and dots per inch together
   * @param dots per inch
   * @throws WrongInputException if it is out of bounds, or says one thing twice
   */
  public static PngSize asked(
      Medium medium, OptionalDouble millimetres, OptionalInt pixels, OptionalDouble dots) {
    if (millimetres.isPresent()) {
      checkMillimetres(medium, millimetres.getAsDouble());
    }
    if (pixels.isPresent()) {
      between("width-px", pixels.getAsInt(), FEWEST_PIXELS, MOST_PIXELS_ACROSS, "pixels");
    }
    if (dots.isPresent()) {
      between("dpi", dots.getAsDouble(), FEWEST_DOTS, MOST_DOTS, "dots per inch");
    }
    if (pixels.isPresent()) {
      return ofPixels(medium, millimetres, pixels.getAsInt(), dots);
    }
    return new PngSize(
        millimetres.orElse(medium.widthMillimetres()), dots.orElse(medium.usualDotsPerInch()));
  }

  private static PngSize ofPixels(
      Medium medium, OptionalDouble millimetres, int pixels, OptionalDouble dots) {
    if (millimetres.isPresent() && dots.isPresent()) {
      throw wrong(
          "width-px",
          "size-said-twice",
          "Millimetres and dots per inch already say how many pixels; leave out one of the three.");
    }
    if (dots.isPresent()) {
      double wide = pixels / dots.getAsDouble() * Medium.MILLIMETRES_PER_INCH;
      checkMillimetres(medium, wide);
      return new PngSize(wide, dots.getAsDouble());
    }
    double wide = millimetres.orElse(medium.widthMillimetres());
    double perInch = pixels / wide * Medium.MILLIMETRES_PER_INCH;
    if (medium.printed() || millimetres.isPresent()) {
      between("width-px", perInch, FEWEST_DOTS, MOST_DOTS, "dots per inch at this width");
    }
    return new PngSize(wide, perInch);
  }

  private static void checkMillimetres(Medium medium, double wide) {
    double least = medium.printed() ? Math.ceil(medium.leastMillimetres()) : 20;
    if (!(wide >= least && wide <= MOST_MILLIMETRES)) {
      String why =
          medium.printed() ? ", since narrower the smallest letters would be under 7 pt" : "";
      throw wrong(
          "width-mm",
          "picture-size-out-of-bounds",
          "Found a width of "
              + shown(wide)
              + " mm; expected "
              + shown(least)
              + " to "
              + MOST_MILLIMETRES
              + " mm for '"
              + medium.label()
              + "'"
              + why
              + ". Ask for a width between these.");
    }
  }

  private static void between(String where, double found, int least, int most, String unit) {
    if (!(found >= least && found <= most)) {
      throw wrong(
          where,
          "picture-size-out-of-bounds",
          "Found "
              + shown(found)
              + " "
              + unit
              + "; expected "
              + least
              + " to "
              + most
              + ". Ask for a size between these.");
    }
  }

  private static String shown(double number) {
    return number == Math.rint(number)
        ? String.format(Locale.ROOT, "%.0f", number)
        : String.format(Locale.ROOT, "%.1f", number);
  }

  private static WrongInputException wrong(String where, String code, String message) {
    return new WrongInputException(List.of(new Problem(where, code, message)));
  }

  /** Width in whole pixels. */
  public int pixelWidth() {
    return (int) Math.round(widthMillimetres / Medium.MILLIMETRES_PER_INCH * dotsPerInch);
  }

  /**
   * The same with fewer dots per inch, so that a tall picture can be held.
   *
   * @param mostPixels across
   */
  PngSize atMost(int mostPixels) {
    return pixelWidth() <= mostPixels
        ? this
        : new PngSize(
            widthMillimetres, mostPixels / widthMillimetres * Medium.MILLIMETRES_PER_INCH);
  }
}
