package gapwise.decision.option;

import gapwise.answer.MethodLine;
import gapwise.evidence.vocabulary.Method;
import java.util.Map;

/**
 * What is reported of one aspect, the part of a table that takes longest.
 *
 * @param column the aspect
 * @param lines what is known of each method of which a group reports it
 */
public record Reported(Column column, Map<Method, MethodLine> lines) {
  public Reported {
    lines = Map.copyOf(lines);
  }
}
