package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Answers;
import gapwise.selection.DefinitionAsked;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import gapwise.server.address.Address;
import gapwise.server.address.QuestionAddress;
import java.util.List;
import java.util.Optional;

/**
 * The ways in which papers define the outcome of a question, one of which can be taken alone.
 *
 * @param choices what the definitions of the series ask for, most series first, then other words
 *     and silence, with the address that takes each
 * @param series how many series there are; one may ask for several things
 * @param alike whether all series ask for the same
 * @param taken the definition that the address takes, with the address that takes every one
 */
public record Definitions(
    List<Choice> choices, int series, boolean alike, Optional<FilterForm.On> taken) {
  /** No outcome, so nothing to define. */
  public static final Definitions NONE = new Definitions(List.of(), 0, true, Optional.empty());

  /** More ways of saying the same help nobody to choose. */
  private static final int MOST_WORDS = 3;

  public Definitions {
    choices = List.copyOf(choices);
  }

  /**
   * What a definition asks for.
   *
   * @param papersWords some of the words in which the papers say it, each once
   */
  public record Choice(
      String label, int series, String href, boolean taken, List<String> papersWords) {
    public Choice {
      papersWords = List.copyOf(papersWords);
    }
  }

  /** The definitions among the series of a question, whichever of them it takes. */
  public static Definitions of(String path, Address address, Answers answers, Question question) {
    Selection every = answers.select(question.withDefinition(Optional.empty()));
    List<Choice> choices =
        every.definitions().stream().map(one -> choice(path, address, every, one)).toList();
    return new Definitions(
        choices, every.rows().size(), every.alikeDefined(), taken(path, address));
  }

  private static Choice choice(
      String path, Address address, Selection every, Selection.Present one) {
    DefinitionAsked asked = DefinitionAsked.find(one.code()).orElseThrow();
    List<String> words =
        every.rows().stream()
            .map(row -> row.definition())
            .filter(asked::fits)
            .flatMap(definition -> definition.words().stream())
            .distinct()
            .limit(MOST_WORDS)
            .toList();
    return new Choice(
        one.label(),
        one.arms(),
        address.with(QuestionAddress.DEFINITION, one.code()).at(path),
        address.first(QuestionAddress.DEFINITION).equals(one.code()),
        words);
  }

  /** The definition that an address takes, with the same address without it. */
  public static Optional<FilterForm.On> taken(String path, Address address) {
    return Optional.of(address.first(QuestionAddress.DEFINITION))
        .flatMap(DefinitionAsked::find)
        .map(
            asked ->
                new FilterForm.On(
                    asked.phrase(), path, address.without(List.of(QuestionAddress.DEFINITION))));
  }

  /** Whether there is anything to choose. */
  public boolean severalWays() {
    return taken.isPresent() || !alike;
  }

  /** What the list of choices is called. */
  public String heading() {
    return say(taken.isPresent() ? "page.another-definition" : "page.definitions");
  }
}
