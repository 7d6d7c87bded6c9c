package gapwise.decision.choice;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.option.Column;
import gapwise.decision.option.Distribution;
import gapwise.decision.option.Option;
import gapwise.decision.option.OptionTable;
import gapwise.evidence.vocabulary.Method;
import gapwise.numeric.RandomValues;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;

/**
 * The methods of a table of which every outcome asked can be drawn, and those of which it cannot.
 *
 * @param columns the outcomes
 * @param methods methods that can be drawn
 * @param sources for each of them a source for each outcome
 * @param leftOut methods that cannot, with the reasons
 * @param filled methods of which an outcome is taken as certain, or as anything within its range
 */
record Drawable(
    List<Column> columns,
    List<Method> methods,
    List<List<Source>> sources,
    List<Named> leftOut,
    List<Named> filled) {

  /**
   * @param reading what a source is taken for
   */
  static Drawable of(
      OptionTable table,
      List<Column> columns,
      Posteriors posteriors,
      UnaryOperator<Source> reading,
      Unknowns unknowns) {
    List<Map<Method, Distribution>> averages =
        columns.stream().map(column -> posteriors.of(table, column)).toList();
    List<Method> methods = new ArrayList<>();
    List<List<Source>> sources = new ArrayList<>();
    List<Named> leftOut = new ArrayList<>();
    List<Named> filled = new ArrayList<>();
    for (Option option : table.options()) {
      List<Source> own = new ArrayList<>();
      for (int c = 0; c < columns.size(); c++) {
        own.add(reading.apply(Source.of(table, option, columns.get(c), averages.get(c))));
      }
      List<String> against = against(own, unknowns);
      if (!against.isEmpty()) {
        leftOut.add(new Named(option.method(), against));
        continue;
      }
      methods.add(option.method());
      sources.add(own);
      List<String> told = told(own);
      if (!told.isEmpty()) {
        filled.add(new Named(option.method(), told));
      }
    }
    return new Drawable(columns, methods, sources, leftOut, filled);
  }

  /** The same without methods of which something else is missing; these are named. */
  Drawable only(Set<String> codes, String why) {
    List<Method> kept = new ArrayList<>();
    List<List<Source>> own = new ArrayList<>();
    List<Named> out = new ArrayList<>(leftOut);
    for (int m = 0; m < methods.size(); m++) {
      if (codes.contains(methods.get(m).code())) {
        kept.add(methods.get(m));
        own.add(sources.get(m));
      } else {
        out.add(new Named(methods.get(m), List.of(why)));
      }
    }
    return new Drawable(
        columns,
        kept,
        own,
        out,
        filled.stream().filter(named -> kept.contains(named.method())).toList());
  }

  /** What stands against drawing a method; empty where nothing does. */
  private static List<String> against(List<Source> own, Unknowns unknowns) {
    List<String> against = new ArrayList<>();
    boolean anyDrawn = own.stream().anyMatch(Source.Drawn.class::isInstance);
    for (Source source : own) {
      if (source instanceof Source.Senseless senseless) {
        against.add(senseless.why());
      } else if (source instanceof Source.Unknown unknown
          && (unknowns == Unknowns.LEAVE_OUT || !anyDrawn)) {
        against.add(unknown.why());
      }
    }
    return against;
  }

  private static List<String> told(List<Source> own) {
    List<String> told = new ArrayList<>();
    for (Source source : own) {
      if (source instanceof Source.Certain certain) {
        told.add(certain.why());
      } else if (source instanceof Source.Unknown unknown) {
        told.add(say("choice.whole-range", Map.of("why", unknown.why())));
      }
    }
    return told;
  }

  /**
   * Draws of one outcome after one method, in the numbers that people read.
   *
   * @param range what an unknown outcome is drawn from
   * @param seed the same seed gives the same draws, whatever else is asked
   */
  double[] draws(int method, int column, Range range, long seed, int n) {
    Source source = sources.get(method).get(column);
    double factor = columns.get(column).measure().axisFactor();
    if (source instanceof Source.Certain certain) {
      return new double[] {factor * certain.value()};
    }
    String name = methods.get(method).code() + ' ' + columns.get(column).aspect().code();
    RandomValues random = RandomValues.ofSeed(31 * seed + name.hashCode());
    double[] draws = new double[n];
    if (source instanceof Source.Drawn drawn) {
      Arrays.setAll(draws, i -> factor * drawn.average().quantile(random.uniform()));
    } else {
      Arrays.setAll(draws, i -> range.at(random.uniform()));
    }
    return draws;
  }
}
