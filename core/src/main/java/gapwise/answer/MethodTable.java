package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.selection.SelectedRow;
import gapwise.wording.Values;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * An answer of several methods, a line each in the order of the vocabulary, those without a study
 * too; or of one method the words of the detail that it is split by. The numbers are those of
 * {@link Told} and of the figure.
 *
 * @param measure what the numbers are
 * @param split the detail; empty where the lines are methods
 * @param lines one for each method that was asked about, or for each word
 */
public record MethodTable(Quantity measure, Optional<DetailKind> split, List<MethodLine> lines) {
  public MethodTable {
    Objects.requireNonNull(measure, "measure");
    Objects.requireNonNull(split, "split");
    lines = List.copyOf(lines);
  }

  /**
   * The table of an answer; empty where fewer than two lines have rows, which is no table.
   *
   * @param reporting codes of methods and of words of details of which some group reports the
   *     outcome, whether it can be used or not
   */
  public static Optional<MethodTable> of(Answer answer, Result result, Set<String> reporting) {
    List<Blocks.Block> blocks = Blocks.of(answer, result);
    return blocks.size() < 2
        ? Optional.empty()
        : Optional.of(table(answer, blocks, Blocks.split(result), reporting));
  }

  /** The same with as few methods as there are, for a table of several outcomes. */
  public static MethodTable column(Answer answer, Set<String> reporting) {
    return table(
        answer,
        answer.result().map(result -> Blocks.of(answer, result)).orElse(List.of()),
        Optional.empty(),
        reporting);
  }

  private static MethodTable table(
      Answer answer, List<Blocks.Block> blocks, Optional<DetailKind> split, Set<String> reporting) {
    Outcome outcome = answer.question().outcome();
    Map<GroupName, Blocks.Block> known =
        blocks.stream().collect(Collectors.toMap(Blocks.Block::of, Function.identity()));
    List<MethodLine> lines = new ArrayList<>();
    for (GroupName name : names(split, blocks)) {
      Optional.ofNullable(known.get(name))
          .map(block -> line(answer, outcome, block))
          .or(() -> without(answer, name, reporting))
          .ifPresent(lines::add);
    }
    return new MethodTable(Told.measure(outcome, answer.selection().rows()), split, lines);
  }

  /** What the lines are, as the head of their column. */
  public String head() {
    return split.map(DetailKind::heading).orElseGet(() -> say("answer.head-of-methods"));
  }

  private static List<GroupName> names(Optional<DetailKind> split, List<Blocks.Block> blocks) {
    return split
        .map(kind -> GroupName.all(blocks.get(0).of().method(), kind))
        .orElseGet(() -> Method.vocabulary().all().stream().map(GroupName::of).toList());
  }

  /** A line without rows; none for methods that were not asked for, and for silence. */
  private static Optional<MethodLine> without(
      Answer answer, GroupName name, Set<String> reporting) {
    Set<String> asked = answer.question().among().methods();
    boolean lacks =
        name.split().isPresent() || asked.isEmpty() || asked.contains(name.method().code());
    return name.facetCode()
        .filter(code -> lacks)
        .map(
            code ->
                new MethodLine(
                    name,
                    "",
                    "",
                    "",
                    reporting.contains(code)
                        ? new MethodLine.NothingUsable()
                        : new MethodLine.NoStudy(),
                    Optional.empty(),
                    List.of()));
  }

  private static MethodLine line(Answer answer, Outcome outcome, Blocks.Block block) {
    MethodLine.Finding finding = finding(block);
    List<SelectedRow> rows = rows(block, finding);
    return new MethodLine(
        block.of(),
        counted(outcome, rows),
        People.series(rows).words(),
        MethodLengths.words(answer.question(), rows),
        finding,
        Optional.of(Told.of(outcome, block)),
        weighed(block, rows));
  }

  private static List<MethodLine.Weighed> weighed(Blocks.Block block, List<SelectedRow> rows) {
    // By identity: two rows are never alike, and a row holds a whole study.
    Set<SelectedRow> among = Collections.newSetFromMap(new IdentityHashMap<>());
    among.addAll(rows);
    return block.lines().stream()
        .filter(line -> among.contains(line.row()))
        .map(
            line ->
                new MethodLine.Weighed(line.row(), line.study().weightPercent(), line.estimate()))
        .toList();
  }

  private static MethodLine.Finding finding(Blocks.Block block) {
    if (block.alone().isPresent()) {
      return new MethodLine.OneSeries(block.alone().get().estimate().orElseThrow());
    }
    boolean without = block.onlyLimit().isPresent() || block.meansOfZero() == block.lines().size();
    Optional<Estimate> average =
        block.summary().map(summary -> PooledValue.average(summary.shown()));
    if (without || average.isEmpty()) {
      return new MethodLine.NoAverage();
    }
    Optional<Limits> newCentre = block.newCentre();
    return new MethodLine.Average(average.get(), newCentre);
  }

  /** The rows that the sentences speak of. */
  private static List<SelectedRow> rows(Blocks.Block block, MethodLine.Finding finding) {
    if (finding instanceof MethodLine.OneSeries) {
      return List.of(block.alone().orElseThrow().row());
    }
    return finding instanceof MethodLine.Average ? block.pooled() : block.rows();
  }

  private static String counted(Outcome outcome, List<SelectedRow> rows) {
    int people = People.number(rows);
    OptionalInt events = People.events(rows);
    boolean several = rows.stream().anyMatch(row -> row.value() instanceof ReportedValue.Tally);
    if (events.isPresent() && people > 0) {
      return several
          ? PlainCount.of(outcome, rows).orElse("")
          : Values.ofTotal(events.getAsInt(), people);
    }
    return people > 0 ? People.of(rows) : say("answer.number-not-stated");
  }
}
