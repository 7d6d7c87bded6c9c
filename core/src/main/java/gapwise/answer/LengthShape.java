package gapwise.answer;

import java.util.Optional;
import java.util.stream.Stream;

/** How an outcome may run over the length of missing bone. */
public enum LengthShape {
  /** A straight line on the scale of the analysis. */
  LINE("line", "Straight line"),
  /** A restricted cubic spline with three knots. */
  CURVE("curve", "Curve");

  private final String code;
  private final String label;

  LengthShape(String code, String label) {
    this.code = code;
    this.label = label;
  }

  /** As an address names it. */
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** The shape of a code. */
  public static Optional<LengthShape> of(String code) {
    return Stream.of(values()).filter(shape -> shape.code.equals(code)).findFirst();
  }
}
