package gapwise.server.home;

import gapwise.answer.Answers;
import gapwise.decision.choice.Posteriors;
import gapwise.decision.option.Aspect;
import gapwise.decision.option.Averages;
import gapwise.decision.option.Column;
import gapwise.decision.option.Distribution;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.option.OptionTable;
import gapwise.evidence.vocabulary.Method;
import java.util.Collection;
import java.util.Map;

/**
 * Remembers the posteriors of averages behind the latest tables in one state of the evidence base,
 * since each is an analysis of its own. Of wishes and prices it knows nothing. Safe for use by many
 * threads.
 */
public final class RememberedAverages implements Posteriors {
  private static final int MOST = 64;

  private final Remembered<Asked, Map<Method, Distribution>> averages;

  private record Asked(OptionQuestion question, Aspect aspect) {}

  RememberedAverages(Answers answers, RememberedOptions options) {
    this.averages =
        new Remembered<>(
            MOST,
            asked -> {
              OptionTable table = options.table(asked.question());
              return table.columns().stream()
                  .filter(column -> column.aspect() == asked.aspect())
                  .findFirst()
                  .map(column -> Averages.of(answers, table, column))
                  .orElse(Map.of());
            });
  }

  @Override
  public Map<Method, Distribution> of(OptionTable table, Column column) {
    return averages.of(new Asked(table.asked(), column.aspect()));
  }

  /** Works out those of one outcome of a table, and remembers them. */
  void workOut(OptionQuestion question, Aspect aspect) {
    averages.of(new Asked(question, aspect));
  }

  /** Whether those of some outcomes are there already. */
  public boolean has(OptionQuestion question, Collection<Aspect> aspects) {
    return aspects.stream().allMatch(aspect -> averages.has(new Asked(question, aspect)));
  }
}
