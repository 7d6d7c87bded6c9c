package gapwise.server.page.option;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.MethodLine;
import gapwise.decision.certainty.Level;
import gapwise.decision.option.Aspect;
import gapwise.decision.option.Cell;
import gapwise.decision.option.Column;
import gapwise.decision.option.Option;
import gapwise.decision.option.OptionTable;
import gapwise.decision.situation.Fit;
import gapwise.decision.situation.Match;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import gapwise.server.address.Address;
import gapwise.server.address.OptionAddress;
import gapwise.server.address.PagePaths;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Methods by outcomes, as the page shows them.
 *
 * @param heads the outcomes
 * @param lines the methods
 * @param reasons what lowers the certainty of each number
 * @param kept what the address has beside differences that matter
 * @param settling the claim of the first two methods about the first outcome
 */
public record TableView(
    List<Head> heads, List<Line> lines, List<Reasons> reasons, List<Kept> kept, String settling) {
  private static final int HUNDRED = 100;

  public TableView {
    heads = List.copyOf(heads);
    lines = List.copyOf(lines);
    reasons = List.copyOf(reasons);
    kept = List.copyOf(kept);
  }

  /** A value of the address. */
  public record Kept(String name, String value) {}

  /**
   * One outcome.
   *
   * @param aspect what matters
   * @param outcome the way in which it is counted
   * @param unit what its numbers are of
   * @param others other ways to count it
   * @param href the methods of the table pooled by this outcome alone
   * @param matters the difference that would matter, as the address has it, or the usual
   */
  public record Head(
      Aspect aspect, String outcome, String unit, List<Way> others, String href, Matters matters) {}

  /** Another way to count an outcome. */
  public record Way(String label, String href) {}

  /** The difference that would matter. */
  public record Matters(String name, String value, String usual, String unit) {}

  /**
   * One method.
   *
   * @param silent whether no study here treated people like this, which is said once
   */
  public record Line(Method method, String studies, boolean silent, List<Shows> cells) {}

  /**
   * One number, or why there is none.
   *
   * @param head the outcome, which a card says again
   * @param words the number, or the reason
   * @param number whether the words are a number
   * @param limits its interval; empty where there is none
   * @param counted how many were counted, in how many series; empty where nothing is
   * @param newCentre what a new centre may expect
   * @param known what else is known of a number; empty where there is none
   */
  public record Shows(
      String head,
      String words,
      boolean number,
      String limits,
      String counted,
      String newCentre,
      Optional<About> known) {}

  /**
   * What stands under a number.
   *
   * @param href the series behind it
   * @param fit how they match, in whole percent by match
   * @param fitWords the same in words
   * @param level how certain it is
   * @param letters what lowers it
   * @param settled whether a person settled that
   */
  public record About(
      String href,
      Map<Match, Integer> fit,
      String fitWords,
      Level level,
      String letters,
      boolean settled) {}

  /** What lowers the certainty of the numbers of one method. */
  public record Reasons(Method method, List<JudgedOutcome> outcomes) {}

  static TableView of(OptionTable table, Address address) {
    return new TableView(
        table.columns().stream().map(column -> head(table, column, address)).toList(),
        table.options().stream().map(option -> line(table, option)).toList(),
        table.options().stream()
            .map(option -> reasons(table, option, address))
            .filter(reasons -> !reasons.outcomes().isEmpty())
            .toList(),
        kept(address),
        settling(table));
  }

  private static List<Kept> kept(Address address) {
    List<Kept> kept = new ArrayList<>();
    address
        .parameters()
        .forEach(
            (name, values) -> {
              if (!name.startsWith(OptionAddress.MATTERS)) {
                values.forEach(value -> kept.add(new Kept(name, value)));
              }
            });
    return kept;
  }

  private static String settling(OptionTable table) {
    return SeriesBehind.claim(
        table.asked(),
        table.columns().get(0),
        table.options().get(0).method(),
        table.options().get(Math.min(1, table.options().size() - 1)).method());
  }

  private static Head head(OptionTable table, Column column, Address address) {
    Aspect aspect = column.aspect();
    String name = OptionAddress.matters(aspect);
    return new Head(
        aspect,
        column.outcome().label(),
        unit(column.measure()),
        column.others().stream()
            .map(
                other ->
                    new Way(
                        other.label(),
                        address
                            .with(OptionAddress.counted(aspect), other.code())
                            .at(PagePaths.COMPARE)))
            .toList(),
        SeriesBehind.all(column, table),
        new Matters(
            name,
            address.first(name),
            shown(column.measure(), aspect.usuallyMatters()),
            unit(column.measure())));
  }

  private static String shown(Quantity measure, OptionalDouble difference) {
    if (difference.isEmpty()) {
      return "";
    }
    double number = difference.getAsDouble();
    return Shown.centimetres(measure.kind() == Quantity.Kind.OF_100 ? number * HUNDRED : number);
  }

  static String unit(Quantity measure) {
    return measure.kind() == Quantity.Kind.OF_100 ? say("page.of-hundred") : measure.unit();
  }

  private static Line line(OptionTable table, Option option) {
    List<Shows> cells = new ArrayList<>();
    for (int i = 0; i < table.columns().size(); i++) {
      cells.add(shows(option, table.columns().get(i), option.cells().get(i)));
    }
    return new Line(
        option.method(),
        say("decision.studies", Map.of("studies", option.studies())),
        option.studies() == 0,
        cells);
  }

  private static Shows shows(Option option, Column column, Cell cell) {
    return cell instanceof Cell.Known known
        ? known(option, column, known)
        : new Shows(column.aspect().label(), cell.whyNot(), false, "", "", "", Optional.empty());
  }

  private static Shows known(Option option, Column column, Cell.Known known) {
    MethodLine line = known.line();
    Quantity measure = column.measure();
    Optional<Estimate> value = value(line);
    return new Shows(
        column.aspect().label(),
        value
            .map(one -> Shown.value(measure, one.value()))
            .orElseGet(() -> say("decision.no-average")),
        value.isPresent(),
        value.map(one -> Shown.limits(measure, one.limits())).orElse(""),
        say("decision.counted-in", Map.of("counted", line.counted(), "series", line.series())),
        newCentre(line)
            .map(
                limits ->
                    say("decision.new-centre", Map.of("limits", Shown.limits(measure, limits))))
            .orElse(""),
        Optional.of(about(option, column, known)));
  }

  private static About about(Option option, Column column, Cell.Known known) {
    Fit fit = known.fit();
    return new About(
        SeriesBehind.href(column, option.method()),
        fit.percents(),
        fit.equals(Fit.NONE) ? "" : fit.words(),
        known.certainty().rating().level(),
        known.certainty().rating().letters(),
        known.certainty().isSettled());
  }

  private static Optional<Estimate> value(MethodLine line) {
    if (line.finding() instanceof MethodLine.Average average) {
      return Optional.of(average.value());
    }
    return line.finding() instanceof MethodLine.OneSeries one
        ? Optional.of(one.value())
        : Optional.empty();
  }

  private static Optional<Limits> newCentre(MethodLine line) {
    return line.finding() instanceof MethodLine.Average average
        ? average.newCentre()
        : Optional.empty();
  }

  private static Reasons reasons(OptionTable table, Option option, Address address) {
    List<JudgedOutcome> outcomes = new ArrayList<>();
    for (int i = 0; i < table.columns().size(); i++) {
      if (option.cells().get(i) instanceof Cell.Known known) {
        outcomes.add(JudgedOutcome.of(table.columns().get(i), option, known, address));
      }
    }
    return new Reasons(option.method(), outcomes);
  }
}
