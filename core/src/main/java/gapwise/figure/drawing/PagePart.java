package gapwise.figure.drawing;

/** A piece of a drawing that takes the full width and a known height. */
public interface PagePart {
  double height();

  /** Draws itself with its upper edge at {@code top}. */
  void draw(Svg svg, double top);
}
