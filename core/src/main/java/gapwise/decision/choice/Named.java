package gapwise.decision.choice;

import gapwise.evidence.vocabulary.Method;
import java.util.List;
import java.util.Objects;

/**
 * A method that is named beside a result, with what must be known of it.
 *
 * @param method which
 * @param why reasons, one for each outcome; at least one
 */
public record Named(Method method, List<String> why) {
  public Named {
    Objects.requireNonNull(method, "method");
    why = List.copyOf(why);
    if (why.isEmpty()) {
      throw new IllegalArgumentException(method.code() + " is named without a reason");
    }
  }
}
