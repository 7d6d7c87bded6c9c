package gapwise.figure.drawing;

import gapwise.budget.Work;
import java.util.List;

/** Parts that stand under each other. */
public final class Stack {
  private Stack() {}

  /** Height of all together. */
  public static double height(List<? extends PagePart> parts) {
    return parts.stream().mapToDouble(PagePart::height).sum();
  }

  /** Room above the head of a page and below its foot. */
  public static double margins(double margin) {
    return margin * 1.5;
  }

  /** Draws parts under each other and gives the height at which they end. */
  public static double draw(Svg svg, List<? extends PagePart> parts, double top) {
    double y = top;
    for (PagePart part : parts) {
      Work.check();
      part.draw(svg, y);
      y += part.height();
    }
    return y;
  }
}
