package gapwise.figure.drawing;

import java.util.Objects;

/**
 * A finished drawing.
 *
 * @param svg the document
 * @param width width of its view box
 * @param height height of its view box
 */
public record Picture(String svg, double width, double height) {
  public Picture {
    Objects.requireNonNull(svg, "svg");
    if (!(width > 0 && height > 0)) {
      throw new IllegalArgumentException("a picture needs a size, was " + width + " x " + height);
    }
  }

  /** The document without its XML declaration, to be set inside a page. */
  public String inline() {
    return svg.substring(svg.indexOf("<svg"));
  }
}
