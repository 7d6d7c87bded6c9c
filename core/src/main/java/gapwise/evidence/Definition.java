package gapwise.evidence;

import gapwise.evidence.vocabulary.DefinitionKind;
import gapwise.evidence.vocabulary.Outcome;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * When a study counts an outcome as reached.
 *
 * @param words of the paper; empty where it does not say
 * @param kinds what it asks for, by the vocabulary; empty where that is not known
 * @param confirmed whether a person chose the kinds; else they are read from the words
 */
public record Definition(Optional<String> words, List<DefinitionKind> kinds, boolean confirmed) {
  public Definition {
    Objects.requireNonNull(words, "words");
    kinds = List.copyOf(kinds);
  }

  /** Whether the paper says anything of it. */
  public boolean isStated() {
    return words.isPresent() || !kinds.isEmpty();
  }

  /**
   * The definition behind a value: the report's own, else that of the study for outcomes of union
   * and of infection.
   *
   * @param report empty for values summed up from patients
   */
  public static Definition of(Study study, Optional<OutcomeReport> report, Outcome outcome) {
    Definition own =
        settled(
            outcome,
            report.flatMap(OutcomeReport::definition),
            report.map(OutcomeReport::definitionKinds).orElse(List.of()));
    if (own.isStated()) {
      return own;
    }
    return switch (outcome.family()) {
      case "Union" -> settled(outcome, study.unionDefinition(), study.unionDefinitionKinds());
      case "Infection" ->
          settled(outcome, study.infectionDefinition(), study.infectionDefinitionKinds());
      default -> own;
    };
  }

  private static Definition settled(
      Outcome outcome, Optional<String> words, List<DefinitionKind> chosen) {
    if (!chosen.isEmpty()) {
      return new Definition(words, chosen, true);
    }
    List<DefinitionKind> read =
        words.map(text -> DefinitionKind.proposed(outcome.family(), text)).orElse(List.of());
    return new Definition(words, read, false);
  }
}
