package gapwise.server.home;

import gapwise.answer.Answers;
import gapwise.curation.StudiesAt;
import gapwise.decision.certainty.Judgement;
import gapwise.decision.certainty.Settled;
import gapwise.decision.option.Aspect;
import gapwise.decision.option.Column;
import gapwise.decision.option.JudgedNumber;
import gapwise.decision.option.OfSeparateGroups;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.option.OptionTable;
import gapwise.decision.option.Options;
import gapwise.decision.option.PairApart;
import gapwise.decision.option.PairThrough;
import gapwise.decision.option.PairWithin;
import gapwise.decision.option.Reported;
import gapwise.decision.option.ThroughOthers;
import gapwise.decision.option.WithinStudies;
import gapwise.search.StudySearch;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * Remembers the latest tables of options in one state of the evidence base, since each holds an
 * analysis for every outcome, worked out outcome by outcome. Safe for use by many threads.
 */
public final class RememberedOptions {
  /**
   * Tables, done and begun: each is worked out bit by bit, and whoever asks by turns with so many
   * others goes on from what is there.
   */
  private static final int MOST = 32;

  private static final int MOST_OUTCOMES = MOST * Aspect.values().length;

  /** Rows of outcomes: all of all groups of a large base. */
  private static final int MOST_ROWS = 10 * RowMemory.MOST_ROWS;

  /** Rows held while pairs are told: those of one outcome of a large base. */
  private static final int MOST_ROWS_OF_PAIRS = 3 * RowMemory.MOST_ROWS;

  private final Remembered<OptionQuestion, OptionTable> tables;
  private final Remembered<OfAspect, Reported> reported;
  private final Remembered<OfAspect, WithinStudies> within;
  private final Remembered<OfAspect, Compared> compared;
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
    this.reported =
        new Remembered<>(
            MOST_OUTCOMES,
            MOST_ROWS,
            one -> one.column().rows().size(),
            asked -> options.reported(asked.question(), asked.aspect()));
    this.tables =
        new Remembered<>(
            MOST,
            RowMemory.MOST_ROWS,
            RememberedOptions::rows,
            question ->
                options.table(
                    question,
                    question.aspects().stream()
                        .map(aspect -> reported.of(new OfAspect(question, aspect)))
                        .toList()));
    this.within =
        new Remembered<>(
            MOST,
            MOST_ROWS_OF_PAIRS,
            WithinStudies::rows,
            asked -> {
              OptionTable table = table(asked.question());
              return new WithinStudies(answers, table, column(table, asked.aspect()));
            });
    this.compared =
        new Remembered<>(
            MOST_OUTCOMES,
            asked -> {
              List<PairWithin> pairs = within.of(asked).all();
              OptionTable table = table(asked.question());
              return new Compared(
                  pairs, OfSeparateGroups.of(answers, table, column(table, asked.aspect())));
            });
    ThroughOthers others = new ThroughOthers(answers);
    this.through =
        new Remembered<>(
            MOST_OUTCOMES,
            asked -> {
              OptionTable table = table(asked.question());
              return others.of(table, column(table, asked.aspect()));
            });
  }

  private static Column column(OptionTable table, Aspect aspect) {
    return table.columns().stream()
        .filter(column -> column.aspect() == aspect)
        .findFirst()
        .orElseThrow();
  }

  private static int rows(OptionTable table) {
    return table.columns().stream().mapToInt(column -> column.rows().size()).sum();
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

  /** Whether a table is there already, its options against each other or not. */
  public boolean hasTable(OptionQuestion question) {
    return tables.has(question);
  }

  /** Whether what is reported of an outcome is there already. */
  boolean hasReported(OptionQuestion question, Aspect aspect) {
    return tables.has(question) || reported.has(new OfAspect(question, aspect));
  }

  /** Works out what is reported of an outcome, a part of the table. */
  void report(OptionQuestion question, Aspect aspect) {
    reported.of(new OfAspect(question, aspect));
  }

  /** Whether the options are set against each other by an outcome. */
  boolean hasCompared(OptionQuestion question, Aspect aspect) {
    return compared.has(new OfAspect(question, aspect));
  }

  /** Goes on with the pairs of an outcome, until the last is told or it is asked to stop. */
  void compare(OptionQuestion question, Aspect aspect, BooleanSupplier enough) {
    OfAspect asked = new OfAspect(question, aspect);
    within.of(asked).goOn(enough);
    if (within.of(asked).isDone()) {
      compared.of(asked);
    }
  }

  /** Its options against each other by one outcome. */
  Compared compared(OptionQuestion question, Aspect aspect) {
    return compared.of(new OfAspect(question, aspect));
  }

  /** Its options against each other. */
  public Compared compared(OptionQuestion question) {
    List<Compared> all =
        question.aspects().stream().map(aspect -> compared(question, aspect)).toList();
    return new Compared(
        all.stream().flatMap(one -> one.within().stream()).toList(),
        all.stream().flatMap(one -> one.apart().stream()).toList());
  }

  /** The table for a question. */
  public OptionTable table(OptionQuestion question) {
    return tables.of(question);
  }
}
