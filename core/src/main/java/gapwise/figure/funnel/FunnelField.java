package gapwise.figure.funnel;

import gapwise.figure.drawing.Ticks;

/** Where things lie in a funnel: effects across, standard errors down. */
record FunnelField(
    double left, double right, double top, double bottom, FunnelScale.Stretch x, Ticks y) {
  double x(double effect) {
    return left + (effect - x.lower()) / (x.upper() - x.lower()) * (right - left);
  }

  double y(double error) {
    return top + error / y.upper() * (bottom - top);
  }
}
