package gapwise.server.page.result;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.GroupName;
import gapwise.answer.MethodLine;
import gapwise.answer.MethodTable;
import gapwise.answer.Told;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.PagePaths;
import gapwise.server.address.QuestionAddress;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Several methods, or the words of a detail of one, side by side, a line each.
 *
 * @param caption what the table is of
 * @param head what the lines are
 * @param unit what the numbers are of, "of 100" or a unit; may be empty
 * @param bars the common axis
 * @param lines one for each of which a study reports the outcome, those with a number first
 * @param without methods or words of which no study here fits
 * @param ofLengths whether a missing length is asked for
 */
public record MethodsView(
    String caption,
    String head,
    String unit,
    MethodBars bars,
    List<Line> lines,
    List<GroupName> without,
    boolean ofLengths) {
  public MethodsView {
    lines = List.copyOf(lines);
    without = List.copyOf(without);
  }

  /**
   * One method, or one word of a detail.
   *
   * @param of what was done
   * @param alone address of the same question about it alone; empty for groups that state nothing
   * @param counts how many were counted, of how many series
   * @param lengths how the missing bone fits the question
   * @param value what came of it
   * @param told the same in sentences; empty where there is nothing to tell
   */
  public record Line(
      GroupName of,
      Optional<String> alone,
      Counts counts,
      String lengths,
      Value value,
      Optional<Told> told) {

    /** Whether there is anything but the name of the method. */
    public boolean speaks() {
      return told.isPresent();
    }
  }

  /** How many were counted. */
  public record Counts(String counted, String series) {}

  /**
   * What came of one method, in words and on the axis.
   *
   * @param words the average with its interval, or why there is none
   * @param further what one series found; empty for most
   * @param newCentre what a new centre may expect
   * @param bar on the common axis; empty where there is no number
   */
  public record Value(
      String words, String further, String newCentre, Optional<MethodBars.Bar> bar) {}

  static MethodsView of(MethodTable table, Address address, boolean ofLengths) {
    Quantity measure = table.measure();
    MethodBars bars = MethodBars.of(table);
    return new MethodsView(
        say(table.split().isPresent() ? "page.words-side-by-side" : "page.methods-side-by-side"),
        table.head(),
        measure.kind() == Quantity.Kind.OF_100 ? say("page.of-hundred") : measure.unit(),
        bars,
        table.lines().stream()
            .filter(line -> !(line.finding() instanceof MethodLine.NoStudy))
            .sorted(Comparator.comparing(line -> line.told().isEmpty()))
            .map(
                line ->
                    new Line(
                        line.of(),
                        alone(line.of(), address),
                        new Counts(line.counted(), line.series()),
                        line.lengths(),
                        value(measure, bars, line),
                        line.told()))
            .toList(),
        table.lines().stream()
            .filter(line -> line.finding() instanceof MethodLine.NoStudy)
            .map(MethodLine::of)
            .toList(),
        ofLengths);
  }

  private static Optional<String> alone(GroupName of, Address address) {
    if (of.split().isEmpty()) {
      return Optional.of(address.with("method", of.method().code()).at(PagePaths.POOLED));
    }
    return of.facetCode()
        .map(
            code ->
                address
                    .without(List.of(QuestionAddress.SPLIT))
                    .and(Filters.DETAIL, code)
                    .at(PagePaths.POOLED));
  }

  private static Value value(Quantity measure, MethodBars bars, MethodLine line) {
    if (line.finding() instanceof MethodLine.Average average) {
      return new Value(
          Told.withLimits(measure, average.value()),
          "",
          average
              .newCentre()
              .map(limits -> Shown.limits(measure, limits))
              .orElseGet(() -> say("page.cannot-be-told")),
          bars.bar(line));
    }
    if (line.finding() instanceof MethodLine.OneSeries one) {
      return new Value(
          say("page.no-average-of-one"),
          say("page.one-series-found", Map.of("value", Told.withLimits(measure, one.value()))),
          say("page.one-series-tells-nothing"),
          bars.bar(line));
    }
    String words =
        line.finding() instanceof MethodLine.NothingUsable
            ? say("page.method-without-number")
            : say("page.method-without-average");
    return new Value(words, "", "", Optional.empty());
  }
}
