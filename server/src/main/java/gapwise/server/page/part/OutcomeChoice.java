package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.OutcomeFamily;
import gapwise.server.address.Address;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The outcomes of one family beside a list or a result: each counts something else, so that one is
 * pooled at a time and another is one click away.
 *
 * @param words what is to choose
 * @param options the outcomes of the family that any group reports, the other filters as they are
 * @param any takes every outcome of the family, for a list; empty where one must be taken
 */
public record OutcomeChoice(String words, List<Option> options, Optional<Option> any) {
  public OutcomeChoice {
    options = List.copyOf(options);
  }

  /** Whether no outcome of them is taken alone yet, so that one is to be chosen. */
  public boolean noneTaken() {
    return options.stream().noneMatch(Option::taken);
  }

  /** One of them with the address that takes it alone. */
  public record Option(String label, String href, boolean taken) {}

  /** The choice where one outcome is taken at a time: one for each family that is asked for. */
  public static List<OutcomeChoice> one(String path, FilterForm form) {
    return all(path, form, false);
  }

  /** The choice where several outcomes may be taken together, as a list of groups does. */
  public static List<OutcomeChoice> several(String path, FilterForm form) {
    return all(path, form, true);
  }

  private static List<OutcomeChoice> all(String path, FilterForm form, boolean together) {
    List<OutcomeChoice> choices = new ArrayList<>();
    for (FilterForm.Family family : form.taken()) {
      List<Option> options =
          family.outcomes().stream()
              .filter(choice -> choice.count() > 0 || !form.severalOutcomes())
              .map(choice -> option(path, form.address(), choice))
              .toList();
      boolean onlyOne = options.size() == 1 && !form.severalOutcomes();
      if (!onlyOne) {
        choices.add(
            new OutcomeChoice(
                say(
                    "page.outcomes-of-family",
                    Map.of(
                        "family",
                        family.name().toLowerCase(Locale.ROOT),
                        "outcomes",
                        options.size())),
                options,
                together ? Optional.of(any(path, form.address(), family)) : Optional.empty()));
      }
    }
    return choices;
  }

  private static Option option(String path, Address address, FilterForm.Choice choice) {
    return new Option(
        say(
            "page.outcome-with-counts",
            Map.of(
                "outcome", choice.label(), "groups", choice.count(), "studies", choice.studies())),
        address.without(List.of("page")).with("outcome", choice.value()).at(path),
        choice.chosen() && address.all("outcome").size() == 1);
  }

  private static Option any(String path, Address address, FilterForm.Family family) {
    OutcomeFamily whole =
        OutcomeFamily.all().stream()
            .filter(one -> one.name().equals(family.name()))
            .findFirst()
            .orElseThrow();
    Address every = address.without(List.of("outcome", "page")).with("outcome", whole.codes());
    boolean taken = OutcomeFamily.exactly(address.all("outcome")).equals(Optional.of(whole));
    return new Option(any(whole), every.at(path), taken);
  }

  /** How every outcome of a family reads as one thing that narrows. */
  public static String any(OutcomeFamily family) {
    return say("page.any-of-family", Map.of("family", family.name()));
  }
}
