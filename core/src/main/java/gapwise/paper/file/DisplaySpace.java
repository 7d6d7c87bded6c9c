package gapwise.paper.file;

import gapwise.paper.DrawnPath.Point;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** From a page's own coordinates to points from the top left corner of the page as displayed. */
final class DisplaySpace {
  private final PDRectangle crop;
  private final int rotation;

  DisplaySpace(PDPage page) {
    crop = page.getCropBox();
    rotation = Math.floorMod(page.getRotation(), 360) / 90 * 90;
  }

  /** Whether the page has a size at all, in numbers that can be reckoned with. */
  boolean isUsable() {
    double sum =
        crop.getLowerLeftX() + crop.getLowerLeftY() + crop.getUpperRightX() + crop.getUpperRightY();
    return Double.isFinite(sum) && crop.getWidth() > 0.5 && crop.getHeight() > 0.5;
  }

  double width() {
    return rotation % 180 == 0 ? crop.getWidth() : crop.getHeight();
  }

  double height() {
    return rotation % 180 == 0 ? crop.getHeight() : crop.getWidth();
  }

  /** A place. */
  Point at(double x, double y) {
    double fromLeft = x - crop.getLowerLeftX();
    double fromBottom = y - crop.getLowerLeftY();
    return switch (rotation) {
      case 90 -> new Point(fromBottom, fromLeft);
      case 180 -> new Point(crop.getWidth() - fromLeft, fromBottom);
      case 270 -> new Point(crop.getHeight() - fromBottom, crop.getWidth() - fromLeft);
      default -> new Point(fromLeft, crop.getHeight() - fromBottom);
    };
  }
}
