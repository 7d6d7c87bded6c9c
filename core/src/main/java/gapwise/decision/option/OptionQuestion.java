package gapwise.decision.option;

import gapwise.decision.situation.Situation;
import gapwise.decision.situation.Taken;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchRequest;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * What is asked of options.
 *
 * @param situation the patient's situation
 * @param taken which groups the numbers are taken from
 * @param aspects what is asked of each option, in the order of {@link Aspect}; at least one
 * @param counted for an aspect the way of counting to take; else that of most groups
 * @param matters for an aspect the difference that would change the choice, above 0; else the usual
 * @param leastStatus how far the extraction of a study must have come at least; empty for any
 */
public record OptionQuestion(
    Situation situation,
    Taken taken,
    List<Aspect> aspects,
    Map<Aspect, Outcome> counted,
    Map<Aspect, Double> matters,
    Optional<ExtractionStatus> leastStatus) {
  public OptionQuestion {
    Objects.requireNonNull(situation, "situation");
    Objects.requireNonNull(taken, "taken");
    aspects = List.copyOf(aspects);
    counted = Map.copyOf(counted);
    matters = Map.copyOf(matters);
    Objects.requireNonNull(leastStatus, "leastStatus");
    if (aspects.isEmpty()) {
      throw new IllegalArgumentException("nothing is asked of the options");
    }
    matters.forEach(
        (aspect, difference) -> {
          if (!(difference > 0)) {
            throw new IllegalArgumentException(
                "a difference that matters is above 0, was " + difference + " of " + aspect);
          }
        });
  }

  /** The same of studies of any status. */
  public OptionQuestion(
      Situation situation,
      Taken taken,
      List<Aspect> aspects,
      Map<Aspect, Outcome> counted,
      Map<Aspect, Double> matters) {
    this(situation, taken, aspects, counted, matters, Optional.empty());
  }

  /** The groups that the numbers are taken from, of every method asked about. */
  public SearchRequest among() {
    SearchRequest among = situation.among();
    return switch (taken) {
      case ANY -> among;
      case LENGTH -> withLength(among);
      case ALIKE ->
          withLength(among)
              .withBones(situation.bones())
              .withInfected(Set.copyOf(situation.infected().stream().toList()));
    };
  }

  /** Groups that were amputated: of them no paper gives a missing length, so none is asked for. */
  SearchRequest amongAmputations() {
    return situation.among();
  }

  /** The groups that the numbers of a method are from. */
  public SearchRequest among(Method method) {
    return (Aspect.isAmputation(method) ? amongAmputations() : among())
        .withMethods(Set.of(method.code()));
  }

  private SearchRequest withLength(SearchRequest among) {
    return situation
        .defect()
        .map(range -> among.withDefect(range, SearchRequest.DefectMatch.OVERLAP))
        .orElse(among);
  }
}
