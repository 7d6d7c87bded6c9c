package gapwise.untidy;

import java.util.List;
import java.util.Objects;

/**
 * What a header was found to speak of.
 *
 * @param target a target of {@code concepts.txt}, such as {@code age} or {@code outcome:union}
 * @param words how many words of the header speak for it
 * @param over words of the header that are not understood
 * @param rivals other targets for which as many words speak
 */
record Concept(String target, int words, List<String> over, List<String> rivals) {
  Concept {
    Objects.requireNonNull(target, "target");
    over = List.copyOf(over);
    rivals = List.copyOf(rivals);
  }

  boolean isSure() {
    return over.isEmpty() && rivals.isEmpty();
  }
}
