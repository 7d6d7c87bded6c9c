package gapwise.figure.bubble;

import gapwise.figure.drawing.Ticks;

/**
 * Where things lie in the field of a bubble plot.
 *
 * @param factor from values to the numbers of the axis
 */
record BubbleField(
    double left, double right, double top, double bottom, Ticks x, Ticks y, double factor) {
  double x(double centimetres) {
    return left + (centimetres - x.lower()) / (x.upper() - x.lower()) * (right - left);
  }

  /** Values that leave the field are held at its edge. */
  double y(double value) {
    double share = (value * factor - y.lower()) / (y.upper() - y.lower());
    return bottom - Math.max(0, Math.min(1, share)) * (bottom - top);
  }
}
