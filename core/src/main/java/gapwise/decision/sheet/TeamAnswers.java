package gapwise.decision.sheet;

import static gapwise.sentence.Sentences.say;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What the page for the team says beside its table.
 *
 * @param within methods compared within studies
 * @param mattering differences that would change the choice, and how probable they are
 * @param weighed what weighing by wishes gives, or that nobody asked for it; at least one sentence
 * @param costed what reckoning in costs gives, or that nobody asked for it; at least one sentence
 */
public record TeamAnswers(
    Listed within, Listed mattering, List<String> weighed, List<String> costed) {
  public TeamAnswers {
    Objects.requireNonNull(within, "within");
    Objects.requireNonNull(mattering, "mattering");
    weighed = List.copyOf(weighed);
    costed = List.copyOf(costed);
  }

  /**
   * The same with less on the page: the longer list of pairs gives way first, then costs, then
   * weighing, of which it is said where they stand. Empty where nothing can give way.
   */
  Optional<TeamAnswers> less() {
    if (mattering.items().size() >= within.items().size() && !mattering.items().isEmpty()) {
      return mattering.less().map(less -> new TeamAnswers(within, less, weighed, costed));
    }
    if (!within.items().isEmpty()) {
      return within.less().map(less -> new TeamAnswers(less, mattering, weighed, costed));
    }
    if (costed.size() > 1) {
      return Optional.of(
          new TeamAnswers(within, mattering, weighed, List.of(say("sheet.costed-elsewhere"))));
    }
    return weighed.size() > 1
        ? Optional.of(
            new TeamAnswers(within, mattering, List.of(say("sheet.weighed-elsewhere")), costed))
        : Optional.empty();
  }

  /** Letters of all that is said, paragraph by paragraph as the page has them. */
  List<Integer> paragraphs() {
    return List.of(
        letters(within.sentences()),
        letters(mattering.sentences()),
        letters(weighed) + letters(costed));
  }

  private static int letters(List<String> sentences) {
    return sentences.stream().mapToInt(one -> one.length() + 1).sum();
  }

  /** Whether costs are asked for, so that their prices stand in the address below. */
  boolean asksCosts() {
    return !costed.equals(List.of(say("sheet.costed-off")));
  }
}
