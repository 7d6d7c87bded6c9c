package gapwise.decision.option;

import gapwise.answer.Answers;
import gapwise.claim.Claim;
import gapwise.claim.Pairs;
import gapwise.claim.Through;
import gapwise.evidence.vocabulary.Method;
import java.util.ArrayList;
import java.util.List;

/** The options of a table against each other by networks of studies and by adjusting. */
public final class ThroughOthers {
  /** Of more methods there are more pairs than a page can tell; they must be named. Our choice. */
  public static final int MOST_METHODS = 10;

  private final Answers answers;

  public ThroughOthers(Answers answers) {
    this.answers = answers;
  }

  /** Methods of which something is known of an outcome. */
  public static List<Method> known(OptionTable table, Column column) {
    return table.options().stream()
        .filter(option -> table.cell(option, column) instanceof Cell.Known)
        .map(Option::method)
        .toList();
  }

  /** Every pair of one outcome of which a network, adjusting or single patients tell, in order. */
  public List<PairThrough> of(OptionTable table, Column column) {
    List<Method> methods = known(table, column);
    List<PairThrough> pairs = new ArrayList<>();
    if (methods.size() > MOST_METHODS) {
      return pairs;
    }
    Pairs asked = new Pairs(answers);
    for (int i = 0; i < methods.size(); i++) {
      for (int j = i + 1; j < methods.size(); j++) {
        Claim claim = WithinStudies.claim(table, column, methods.get(i), methods.get(j));
        Through through = asked.through(claim);
        if (through.speaks()) {
          pairs.add(new PairThrough(column, methods.get(i), methods.get(j), through));
        }
      }
    }
    return pairs;
  }
}
