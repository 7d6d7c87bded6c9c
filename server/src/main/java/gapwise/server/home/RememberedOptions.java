package gapwise.server.home;

import gapwise.answer.Answers;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.option.OptionTable;
import gapwise.decision.option.Options;
import gapwise.search.StudySearch;

/**
 * Remembers the latest tables of options in one state of the evidence base, since each holds an
 * analysis for every outcome. Safe for use by many threads.
 */
public final class RememberedOptions {
  /** A table holds the rows of all its outcomes. */
  private static final int MOST = 16;

  private final Remembered<OptionQuestion, OptionTable> tables;

  RememberedOptions(StudySearch search, Answers answers) {
    this.tables = new Remembered<>(MOST, new Options(search, answers)::table);
  }

  /** Whether a table is there already. */
  public boolean has(OptionQuestion question) {
    return tables.has(question);
  }

  /** The table for a question. */
  public OptionTable table(OptionQuestion question) {
    return tables.of(question);
  }
}
