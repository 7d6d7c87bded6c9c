package gapwise.server.home;

import gapwise.answer.Answers;
import gapwise.curation.StudiesAt;
import gapwise.decision.certainty.Judgement;
import gapwise.decision.certainty.Settled;
import gapwise.decision.option.Aspect;
import gapwise.decision.option.JudgedNumber;
import gapwise.decision.option.OfSeparateGroups;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.option.OptionTable;
import gapwise.decision.option.Options;
import gapwise.decision.option.PairApart;
import gapwise.decision.option.PairThrough;
import gapwise.decision.option.PairWithin;
import gapwise.decision.option.ThroughOthers;
import gapwise.decision.option.WithinStudies;
import gapwise.search.StudySearch;
import java.util.List;
import java.util.Optional;

/**
 * Remembers the latest tables of options in one state of the evidence base, since each holds an
 * analysis for every outcome. Safe for use by many threads.
 */
public final class RememberedOptions {
  /** A table holds the rows of all its outcomes. */
  private static final int MOST = 16;

  private static final int MOST_OUTCOMES = 64;

  private final Remembered<OptionQuestion, OptionTable> tables;
  private final Remembered<OptionQuestion, Compared> compared;
  private final Remembered<OfAspect, List<PairThrough>> through;

  private record OfAspect(OptionQuestion question, Aspect aspect) {}

  /**
   * The options of a table against each other.
   *
   * @param within studies that hold two of them
   * @param apart as separate groups, where a difference is named that matters
   */
  public record Compared(List<PairWithin> within, List<PairApart> apart) {
    public Compared {
      within = List.copyOf(within);
      apart = List.copyOf(apart);
    }
  }

  RememberedOptions(StudySearch search, Answers answers, StudiesAt studies) {
    Options options = new Options(search, answers, number -> settled(studies, number));
    this.tables = new Remembered<>(MOST, options::table);
    WithinStudies within = new WithinStudies(answers);
    this.compared =
        new Remembered<>(
            MOST,
            question -> {
              OptionTable table = tables.of(question);
              return new Compared(within.of(table), OfSeparateGroups.of(answers, table));
            });
    ThroughOthers others = new ThroughOthers(answers);
    this.through =
        new Remembered<>(
            MOST_OUTCOMES,
            asked -> {
              OptionTable table = tables.of(asked.question());
              return table.columns().stream()
                  .filter(column -> column.aspect() == asked.aspect())
                  .findFirst()
                  .map(column -> others.of(table, column))
                  .orElse(List.of());
            });
  }

  /** Whether networks and adjusting are worked out for an outcome. */
  boolean hasThrough(OptionQuestion question, Aspect aspect) {
    return through.has(new OfAspect(question, aspect));
  }

  /** What networks of studies and adjusting say of the pairs of an outcome. */
  public List<PairThrough> through(OptionQuestion question, Aspect aspect) {
    return through.of(new OfAspect(question, aspect));
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
    return tables.has(question) && compared.has(question);
  }

  /** Whether a table is there already, its options against each other or not. */
  public boolean hasTable(OptionQuestion question) {
    return tables.has(question);
  }

  /** Its options against each other. */
  public Compared compared(OptionQuestion question) {
    return compared.of(question);
  }

  /** The table for a question. */
  public OptionTable table(OptionQuestion question) {
    return tables.of(question);
  }
}
