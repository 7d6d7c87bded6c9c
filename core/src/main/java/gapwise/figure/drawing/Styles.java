package gapwise.figure.drawing;

import java.util.OptionalDouble;

/**
 * Sizes for each medium, in units of a drawing: 96 are one inch of print. No letter is under 12
 * units, 9 pt, at the size that the medium is made for.
 */
final class Styles {
  /** Series up to which rows are set roomy; more are set closer. */
  static final int ROOMY_ON_PAGE = 50;

  private static final int ROOMY_ON_A4 = 20;

  private static final int ROOMY_ON_A_SLIDE = 6;

  /** Tallest figure in a printed paper: 230 mm, which leaves room for its legend. */
  private static final double TALLEST_IN_A_PAPER = 230 / 25.4 * 96;

  /**
   * Tallest drawing for a screen, so that a page or picture of thousands of series can be held:
   * some 400 series in columns, or 350 stacked on a phone. Our choice.
   */
  private static final OptionalDouble TALLEST_ON_A_SCREEN = OptionalDouble.of(8000);

  private static final OptionalDouble TALLEST_ON_A_PHONE = OptionalDouble.of(40_000);

  private Styles() {}

  static Style of(Medium medium, int rows) {
    return switch (medium) {
      case SLIDE -> rows <= ROOMY_ON_A_SLIDE ? roomySlide() : closeSlide();
      case COLUMN -> column();
      case TWO_COLUMNS -> twoColumns();
      case A4 -> rows <= ROOMY_ON_A4 ? roomyA4() : closeA4();
      case PAGE -> rows <= ROOMY_ON_PAGE ? roomyPage() : closePage();
      case PHONE -> phone();
    };
  }

  /** The smallest letters of a medium, however many rows. */
  static double smallestText(Medium medium) {
    Style.Type few = of(medium, 1).type();
    Style.Type many = of(medium, Integer.MAX_VALUE).type();
    return Math.min(Math.min(few.small(), few.foot()), Math.min(many.small(), many.foot()));
  }

  /**
   * On a slide of 13.3 in the smallest letters are 12 pt, the least that a projector carries
   * (common practice, no source): 16 units, 1/45 of the height.
   */
  private static Style roomySlide() {
    return new Style(
        new Style.Sheet(1280, OptionalDouble.of(720), false, "px", 34, false, false),
        new Style.Type(29, 20, 19, 16, 16),
        new Style.Rhythm(32, 21, 13, 6.5, 17, 142, 2));
  }

  /** More rows at the same least size, so that methods compared stand on one slide. */
  private static Style closeSlide() {
    return new Style(
        new Style.Sheet(1280, OptionalDouble.of(720), false, "px", 24, false, false),
        new Style.Type(25, 18, 16.5, 16, 16),
        new Style.Rhythm(23.5, 19, 10, 5, 13, 120, 2));
  }

  private static Style column() {
    return new Style(
        new Style.Sheet(321.26, OptionalDouble.of(TALLEST_IN_A_PAPER), true, "mm", 6, true, false),
        new Style.Type(14.5, 12.5, 12.5, 12, 12),
        new Style.Rhythm(20, 15, 8, 4, 12, 100, 2));
  }

  private static Style twoColumns() {
    return new Style(
        new Style.Sheet(661.42, OptionalDouble.of(TALLEST_IN_A_PAPER), true, "mm", 8, false, false),
        new Style.Type(15.5, 12.5, 12.5, 12, 12),
        new Style.Rhythm(22, 15, 8, 4, 11, 92, 2));
  }

  private static Style roomyA4() {
    return new Style(
        new Style.Sheet(793.7, OptionalDouble.of(1122.52), false, "mm", 40, false, false),
        new Style.Type(18, 13, 12.5, 12, 12),
        new Style.Rhythm(24, 15, 8.5, 4.2, 12, 104, 2));
  }

  private static Style closeA4() {
    return new Style(
        new Style.Sheet(793.7, OptionalDouble.of(1122.52), false, "mm", 40, false, false),
        new Style.Type(17, 12.5, 12, 12, 12),
        new Style.Rhythm(17, 14.5, 6, 3, 9, 98, 1));
  }

  private static Style roomyPage() {
    return new Style(
        new Style.Sheet(1080, TALLEST_ON_A_SCREEN, true, "px", 28, false, false),
        new Style.Type(22, 14.5, 14, 12, 12),
        new Style.Rhythm(27, 15, 10.5, 5, 15, 136, 2));
  }

  private static Style closePage() {
    return new Style(
        new Style.Sheet(1080, TALLEST_ON_A_SCREEN, true, "px", 28, false, false),
        new Style.Type(22, 14.5, 12.5, 12, 12),
        new Style.Rhythm(18.5, 14.5, 7, 3.6, 10, 112, 1));
  }

  private static Style phone() {
    return new Style(
        new Style.Sheet(360, TALLEST_ON_A_PHONE, true, "px", 14, true, false),
        new Style.Type(18, 13.5, 14, 12.5, 12.5),
        new Style.Rhythm(24, 16.5, 9, 5, 14, 116, 2));
  }
}
