package gapwise.figure;

import java.util.OptionalDouble;

/** What a figure is drawn for. */
public enum Medium {
  /** A screen about 1080 wide; one drawing as tall as it needs. */
  PAGE,
  /** A screen about 360 wide: each series stacked in a few lines; one drawing. */
  PHONE,
  /** Printed A4 pages, upright; no text below 7 pt. */
  A4,
  /** Slides of 16 to 9. */
  SLIDE;

  /** Series up to which rows are set roomy; more are set closer. */
  static final int ROOMY_ON_PAGE = 50;

  private static final int ROOMY_ON_A4 = 26;
  private static final int ROOMY_ON_SLIDE = 12;

  Style style(int rows) {
    return switch (this) {
      case PAGE -> rows <= ROOMY_ON_PAGE ? roomyPage() : closePage();
      case PHONE -> phone();
      case A4 -> rows <= ROOMY_ON_A4 ? roomyA4() : closeA4();
      case SLIDE -> rows <= ROOMY_ON_SLIDE ? roomySlide() : closeSlide();
    };
  }

  private static Style roomyPage() {
    return new Style(
        new Style.Sheet(1080, OptionalDouble.empty(), "px", 28, false),
        new Style.Type(22, 14.5, 14, 12),
        new Style.Rhythm(27, 15, 10.5, 5, 15, 136, 2));
  }

  private static Style closePage() {
    return new Style(
        new Style.Sheet(1080, OptionalDouble.empty(), "px", 28, false),
        new Style.Type(22, 14.5, 12, 11),
        new Style.Rhythm(18.5, 14, 7, 3.6, 10, 112, 1));
  }

  private static Style phone() {
    return new Style(
        new Style.Sheet(360, OptionalDouble.empty(), "px", 14, true),
        new Style.Type(18, 13.5, 14, 12.5),
        new Style.Rhythm(24, 16.5, 9, 5, 14, 116, 2));
  }

  // On A4, 96 units are one inch, so 7 pt are 9.34 units.
  private static Style roomyA4() {
    return new Style(
        new Style.Sheet(793.7, OptionalDouble.of(1122.52), "mm", 40, false),
        new Style.Type(17, 11.5, 10.4, 9.6),
        new Style.Rhythm(22.5, 12.5, 8, 4, 12, 104, 2));
  }

  private static Style closeA4() {
    return new Style(
        new Style.Sheet(793.7, OptionalDouble.of(1122.52), "mm", 40, false),
        new Style.Type(17, 11.5, 9.7, 9.5),
        new Style.Rhythm(15, 12, 5.6, 3, 8.4, 94, 1));
  }

  private static Style roomySlide() {
    return new Style(
        new Style.Sheet(1280, OptionalDouble.of(720), "px", 38, false),
        new Style.Type(26, 16, 15.5, 13.5),
        new Style.Rhythm(26.5, 16, 10.5, 5.2, 14, 156, 1));
  }

  private static Style closeSlide() {
    return new Style(
        new Style.Sheet(1280, OptionalDouble.of(720), "px", 38, false),
        new Style.Type(26, 16, 14.5, 13),
        new Style.Rhythm(24, 16, 9, 4.6, 13, 150, 1));
  }
}
