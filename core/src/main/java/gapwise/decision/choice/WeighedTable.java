package gapwise.decision.choice;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.option.Aspect;
import gapwise.decision.option.Column;
import gapwise.decision.option.OptionTable;
import gapwise.decision.weighing.Alternative;
import gapwise.decision.weighing.Criterion;
import gapwise.decision.weighing.Outcomes;
import gapwise.decision.weighing.Weighed;
import gapwise.decision.weighing.Weighing;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** What comes of weighing the methods of a table. */
public sealed interface WeighedTable permits WeighedMethods, WeighedTable.NotWeighed {
  /** Weighings. */
  int DRAWS = 10_000;

  /** Methods that are left out, with the reasons. */
  List<Named> leftOut();

  /**
   * Nothing was weighed.
   *
   * @param problems why, and what to change; at least one
   * @param leftOut methods of which too little is known
   */
  record NotWeighed(List<Problem> problems, List<Named> leftOut) implements WeighedTable {
    public NotWeighed {
      problems = List.copyOf(problems);
      leftOut = List.copyOf(leftOut);
      if (problems.isEmpty()) {
        throw new IllegalArgumentException("what is not weighed has a reason");
      }
    }
  }

  /** Weighs the methods of a table. */
  static WeighedTable of(OptionTable table, WeighingAsked asked, Posteriors posteriors) {
    Problems problems = new Problems();
    List<Column> columns = new ArrayList<>();
    List<Criterion> criteria = new ArrayList<>();
    List<Range> ranges = new ArrayList<>();
    for (Aspect aspect : asked.aspects()) {
      Optional<Column> column = column(table, aspect);
      if (column.isEmpty()) {
        problems.add(
            aspect.code(),
            "not-in-the-table",
            say("choice.not-in-the-table", Map.of("outcome", aspect.label())));
        continue;
      }
      Optional<Range> range =
          Optional.ofNullable(asked.ranges().get(aspect))
              .or(() -> Range.usual(aspect, column.get().measure()));
      if (range.isEmpty()) {
        problems.add(
            aspect.code(), "no-range", say("choice.no-range", Map.of("outcome", aspect.label())));
        continue;
      }
      columns.add(column.get());
      ranges.add(range.get());
      criteria.add(
          new Criterion(aspect.code(), aspect.label(), range.get().worst(), range.get().best()));
    }
    if (problems.isEmpty()) {
      problems.addAll(Weighing.contradictions(criteria, asked.wishes()));
    }
    if (!problems.isEmpty()) {
      return new NotWeighed(problems.list(), List.of());
    }
    Drawable drawable =
        Drawable.of(table, columns, posteriors, UnaryOperator.identity(), asked.unknowns());
    if (drawable.methods().size() < 2) {
      return new NotWeighed(
          List.of(
              new Problem(
                  "methods",
                  "fewer-than-two-methods",
                  say("choice.fewer-than-two", Map.of("methods", drawable.methods().size())))),
          drawable.leftOut());
    }
    return weighed(table, asked, drawable, criteria, ranges);
  }

  private static Optional<Column> column(OptionTable table, Aspect aspect) {
    return table.columns().stream().filter(one -> one.aspect() == aspect).findFirst();
  }

  private static WeighedTable weighed(
      OptionTable table,
      WeighingAsked asked,
      Drawable drawable,
      List<Criterion> criteria,
      List<Range> ranges) {
    List<List<double[]>> draws = new ArrayList<>();
    List<List<Double>> means = new ArrayList<>();
    for (int m = 0; m < drawable.methods().size(); m++) {
      List<double[]> own = new ArrayList<>();
      for (int c = 0; c < criteria.size(); c++) {
        own.add(drawable.draws(m, c, ranges.get(c), asked.seed(), DRAWS));
      }
      draws.add(own);
      means.add(own.stream().map(one -> Arrays.stream(one).average().orElseThrow()).toList());
    }
    Weighing weighing =
        Weighing.of(
            drawable.methods().stream()
                .map(method -> new Alternative(method.code(), method.shortLabel()))
                .toList(),
            criteria,
            Outcomes.of(draws),
            asked.wishes(),
            asked.seed(),
            DRAWS);
    if (weighing instanceof Weighing.Refused refused) {
      return new NotWeighed(refused.problems(), drawable.leftOut());
    }
    return new WeighedMethods(
        table,
        asked,
        drawable.columns(),
        drawable.methods(),
        (Weighed) weighing,
        means,
        drawable.leftOut(),
        drawable.filled());
  }
}
