package gapwise.evidence;

import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.MethodPart;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What was done in an arm: one principal method and the parts that go with it, so that a
 * combination (a graft inside a scaffold over a fusion nail) is one arm and never counted in two
 * methods.
 *
 * @param principal the method by which the arm is counted
 * @param parts further parts
 * @param words the method in the words of the paper
 */
public record MethodUsed(Method principal, List<MethodPart> parts, Optional<String> words) {
  public MethodUsed {
    Objects.requireNonNull(principal, "principal");
    Objects.requireNonNull(words, "words");
    parts = List.copyOf(parts);
  }

  public static MethodUsed of(Method principal) {
    return new MethodUsed(principal, List.of(), Optional.empty());
  }
}
