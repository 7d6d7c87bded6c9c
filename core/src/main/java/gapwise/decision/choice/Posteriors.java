package gapwise.decision.choice;

import gapwise.decision.option.Column;
import gapwise.decision.option.Distribution;
import gapwise.decision.option.OptionTable;
import gapwise.evidence.vocabulary.Method;
import java.util.Map;

/** The posteriors of averages behind a table. */
@FunctionalInterface
public interface Posteriors {
  /** Of one outcome, for each method that has one. */
  Map<Method, Distribution> of(OptionTable table, Column column);
}
