package gapwise.paper;

import java.io.ByteArrayInputStream;
import java.io.InputStream;

/**
 * A page as a picture. Immutable.
 *
 * <p>A point of the page lies at its place times {@link #dotsPerInch} / 72.
 */
public final class Picture implements PagePicture {
  private final byte[] png;
  private final int width;
  private final int height;
  private final double dotsPerInch;

  public Picture(byte[] png, int width, int height, double dotsPerInch) {
    this.png = png.clone();
    this.width = width;
    this.height = height;
    this.dotsPerInch = dotsPerInch;
  }

  /** The bytes of a PNG file. */
  public InputStream png() {
    return new ByteArrayInputStream(png);
  }

  /** Pixels from left to right. */
  public int width() {
    return width;
  }

  /** Pixels from top to bottom. */
  public int height() {
    return height;
  }

  /** From left to right as it is shown, points. */
  public double shownWidth() {
    return width * 72 / dotsPerInch;
  }

  /** From top to bottom as it is shown, points. */
  public double shownHeight() {
    return height * 72 / dotsPerInch;
  }

  /** What was really used: less than asked for where the page is so large. */
  public double dotsPerInch() {
    return dotsPerInch;
  }
}
