package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Answer;
import gapwise.answer.Answers;
import gapwise.answer.MovedByRisk;
import gapwise.answer.RiskOfSeries;
import gapwise.evidence.vocabulary.Risk;
import gapwise.selection.Question;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The risk of bias of the series behind a result: how many stand at each, the same without those at
 * serious or critical risk one click away, and what was moved where some are left out.
 *
 * @param words how many; empty where there are no series
 * @param moved what leaving series out moved
 * @param link what the address takes instead; empty where there is nothing to take
 */
public record RiskOfBias(Optional<String> words, List<String> moved, Optional<Link> link) {
  public RiskOfBias {
    moved = List.copyOf(moved);
  }

  /** The same question to other series. */
  public record Link(String words, String href) {}

  /**
   * The risk of bias of an answer. Where the question leaves series out for it, the question is
   * answered once more with all of them.
   */
  public static RiskOfBias of(String path, Address address, Answer answer, Answers answers) {
    RiskOfSeries risk = RiskOfSeries.of(answer.selection());
    Optional<String> words = risk.series() == 0 ? Optional.empty() : Optional.of(risk.words());
    Question question = answer.question();
    if (!question.among().risks().isEmpty()) {
      Answer every = answers.ask(question.withAmong(question.among().withRisks(Set.of())));
      return new RiskOfBias(
          words,
          MovedByRisk.told(every, answer),
          Optional.of(
              new Link(say("page.every-risk"), address.without(List.of(Filters.RISK)).at(path))));
    }
    return new RiskOfBias(
        words,
        List.of(),
        Optional.of(risk.high())
            .filter(high -> high > 0)
            .map(
                high ->
                    new Link(
                        say("page.without-high-risk", Map.of("high", high)),
                        withoutHigh(address).at(path))));
  }

  private static Address withoutHigh(Address address) {
    Address kept = address;
    for (Risk risk : Risk.neitherSeriousNorCritical()) {
      kept = kept.and(Filters.RISK, risk.code());
    }
    return kept;
  }
}
