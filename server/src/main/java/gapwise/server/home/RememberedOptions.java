package gapwise.server.home;

import gapwise.answer.Answers;
import gapwise.curation.StudiesAt;
import gapwise.decision.certainty.Judgement;
import gapwise.decision.certainty.Settled;
import gapwise.decision.option.JudgedNumber;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.option.OptionTable;
import gapwise.decision.option.Options;
import gapwise.search.StudySearch;
import java.util.Optional;

/**
 * Remembers the latest tables of options in one state of the evidence base, since each holds an
 * analysis for every outcome. Safe for use by many threads.
 */
public final class RememberedOptions {
  /** A table holds the rows of all its outcomes. */
  private static final int MOST = 16;

  private final Remembered<OptionQuestion, OptionTable> tables;

  RememberedOptions(StudySearch search, Answers answers, StudiesAt studies) {
    Options options = new Options(search, answers, number -> settled(studies, number));
    this.tables = new Remembered<>(MOST, options::table);
  }

  private static Optional<Settled> settled(StudiesAt studies, JudgedNumber number) {
    return studies
        .judgement(number.key())
        .map(
            kept ->
                new Settled(
                    Judgement.ofJson(kept.json()),
                    kept.stamp().who(),
                    kept.stamp().when(),
                    kept.stamp().version()));
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
