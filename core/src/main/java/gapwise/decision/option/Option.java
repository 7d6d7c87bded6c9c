package gapwise.decision.option;

import gapwise.evidence.vocabulary.Method;
import java.util.List;
import java.util.Objects;

/**
 * One method.
 *
 * @param method what is done
 * @param studies of it, whatever they report
 * @param cells one for each column, in its order
 */
public record Option(Method method, int studies, List<Cell> cells) {
  public Option {
    Objects.requireNonNull(method, "method");
    cells = List.copyOf(cells);
  }
}
