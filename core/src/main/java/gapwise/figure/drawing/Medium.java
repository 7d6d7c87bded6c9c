package gapwise.figure.drawing;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What a figure is drawn for. The one place where the media of all figures are listed; their sizes
 * stand in {@link Styles}.
 */
public enum Medium {
  /** Slides of 16 to 9; no text below 12 pt on a slide 13.3 in wide. */
  SLIDE("slide", "Slide, 16 to 9", 144),
  /** One column of a printed paper; no text below 9 pt. */
  COLUMN("column", "One column of a paper", 300),
  /** The full width of a printed paper of two columns; no text below 9 pt. */
  TWO_COLUMNS("two-columns", "Two columns of a paper", 300),
  /** Printed A4 pages, upright; no text below 9 pt. */
  A4("a4", "A4 page, upright", 300),
  /**
   * A screen about 1080 wide; one drawing as tall as it needs, sheets only of hundreds of series.
   */
  PAGE("page", "Screen", 192),
  /** A screen about 360 wide: each series stacked in a few lines; sheets as of a screen. */
  PHONE("phone", "Phone", 288);

  /** Units of a drawing to an inch (CSS Values and Units, section 6.2: 96 px are 1 in). */
  static final double UNITS_PER_INCH = 96;

  public static final double MILLIMETRES_PER_INCH = 25.4;

  /** Least size of print in points where a figure is set smaller; common practice, no source. */
  private static final double LEAST_PRINT_POINTS = 7;

  private static final double POINTS_PER_INCH = 72;

  private final String code;
  private final String label;
  private final int usualDotsPerInch;

  Medium(String code, String label, int usualDotsPerInch) {
    this.code = code;
    this.label = label;
    this.usualDotsPerInch = usualDotsPerInch;
  }

  /** The medium of a code; empty if there is none. */
  public static Optional<Medium> of(String code) {
    return List.of(values()).stream().filter(medium -> medium.code.equals(code)).findFirst();
  }

  /** All codes in words: "slide, column, ...". */
  public static String codes() {
    return Arrays.stream(values()).map(Medium::code).collect(Collectors.joining(", "));
  }

  /** Its code in addresses. */
  public String code() {
    return code;
  }

  /** Its name for people. */
  public String label() {
    return label;
  }

  /** Dots per inch of a picture unless another number is asked for. */
  public int usualDotsPerInch() {
    return usualDotsPerInch;
  }

  /** Width it is laid out for, in millimetres. */
  public double widthMillimetres() {
    return style(1).sheet().width() / UNITS_PER_INCH * MILLIMETRES_PER_INCH;
  }

  /** Whether it is printed, so that letters have a least size. */
  public boolean printed() {
    return this == COLUMN || this == TWO_COLUMNS || this == A4;
  }

  /** Width below which the smallest letters would be smaller than print may be, in millimetres. */
  public double leastMillimetres() {
    double points = Styles.smallestText(this) / UNITS_PER_INCH * POINTS_PER_INCH;
    return widthMillimetres() * LEAST_PRINT_POINTS / points;
  }

  public Style style(int rows) {
    return Styles.of(this, rows);
  }
}
