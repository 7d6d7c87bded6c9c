package gapwise.figure.drawing;

import gapwise.figure.value.Check;
import java.util.Objects;

/**
 * How the marks of one method look and what it is called.
 *
 * @param code code of the method
 * @param label for people
 * @param mark name of its shape
 * @param colour as {@code #RRGGBB}; shape carries the meaning in grey
 */
public record MethodMark(String code, String label, String mark, String colour) {
  public MethodMark {
    Check.words(label, "label");
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(mark, "mark");
    Check.words(colour, "colour");
  }
}
