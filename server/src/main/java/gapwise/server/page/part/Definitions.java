package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Answers;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import gapwise.server.address.Address;
import gapwise.server.address.QuestionAddress;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The ways in which papers define the outcome of a question, one of which can be taken alone.
 *
 * @param choices the definitions that the series state, most series first, with the address that
 *     takes each
 * @param silent how many of the series do not say
 * @param taken the definition that the address takes, with the address that takes every one
 */
public record Definitions(List<Choice> choices, int silent, Optional<FilterForm.On> taken) {
  /** No outcome, so nothing to define. */
  public static final Definitions NONE = new Definitions(List.of(), 0, Optional.empty());

  public Definitions {
    choices = List.copyOf(choices);
  }

  /** A definition in a paper's words. */
  public record Choice(String words, int series, String href, boolean taken) {}

  /** The definitions among the series of a question, whichever of them it takes. */
  public static Definitions of(String path, Address address, Answers answers, Question question) {
    Selection every = answers.select(question.withDefinition(Optional.empty()));
    List<Choice> choices =
        every.definitions().stream()
            .map(
                one ->
                    new Choice(
                        one.label(),
                        one.arms(),
                        address.with(QuestionAddress.DEFINITION, one.code()).at(path),
                        address.first(QuestionAddress.DEFINITION).equals(one.code())))
            .toList();
    int stated = choices.stream().mapToInt(Choice::series).sum();
    return new Definitions(choices, every.rows().size() - stated, taken(path, address));
  }

  /** The definition that an address takes, with the same address without it. */
  public static Optional<FilterForm.On> taken(String path, Address address) {
    return Optional.of(address.first(QuestionAddress.DEFINITION))
        .filter(words -> !words.isEmpty())
        .map(
            words ->
                new FilterForm.On(
                    say("page.defined-as", Map.of("definition", words)),
                    path,
                    address.without(List.of(QuestionAddress.DEFINITION))));
  }

  /** Whether there is anything to choose. */
  public boolean severalWays() {
    return taken.isPresent() || choices.size() + (silent > 0 ? 1 : 0) > 1 && !choices.isEmpty();
  }

  /** What the list of choices is called. */
  public String heading() {
    if (taken.isPresent()) {
      return say("page.another-definition");
    }
    return say("page.definitions", Map.of("definitions", choices.size()));
  }
}
