package gapwise.server.page.result;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Answer;
import gapwise.answer.Blocks;
import gapwise.server.address.Address;
import gapwise.server.address.QuestionAddress;
import java.util.Map;
import java.util.Optional;

/** What a page says where an address asks it to split a result by a detail and it cannot. */
final class SplitWords {
  private SplitWords() {}

  /** Why it is not split; empty where it is, or nobody asked. */
  static Optional<String> notSplit(Address address, Answer answer) {
    boolean split = answer.result().flatMap(Blocks::split).isPresent();
    return QuestionAddress.split(address)
        .filter(kind -> !split && answer.result().isPresent())
        .map(
            kind ->
                say(
                    severalMethods(answer) ? "page.not-split-by-methods" : "page.not-split-silent",
                    Map.of("detail", kind.shortLabel())));
  }

  private static boolean severalMethods(Answer answer) {
    return answer.selection().rows().stream()
            .map(row -> row.arm().method().principal())
            .distinct()
            .count()
        > 1;
  }
}
