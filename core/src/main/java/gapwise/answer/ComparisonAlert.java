package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.evidence.ArmDefect;
import gapwise.evidence.ArmFollowUp;
import gapwise.evidence.ArmInfection;
import gapwise.evidence.EventCount;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Shown;
import gapwise.selection.SelectedRow;
import gapwise.sentence.Counted;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;

/**
 * What differs between the groups of patients behind results of several methods, so that nobody
 * reads results side by side as a comparison.
 *
 * @param lines methods, or words of one detail, in the order of the vocabulary, two or more
 */
public record ComparisonAlert(List<Line> lines) {
  /**
   * The patients of one method, or of one word of a detail, in words.
   *
   * @param of which of them
   * @param series number of series
   * @param patients patients or limbs that the numbers speak of
   * @param missingBone middle of the series' means and medians, and shortest to longest
   * @param infected infected at the start
   * @param followed follow-up
   * @param designs designs with their numbers, best first
   */
  public record Line(
      GroupName of,
      int series,
      String patients,
      String missingBone,
      String infected,
      String followed,
      String designs) {}

  public ComparisonAlert {
    lines = List.copyOf(lines);
    if (lines.size() < 2) {
      throw new IllegalArgumentException("side by side stand two methods or more, were " + lines);
    }
  }

  /** The detail that the lines are words of; empty where they are methods. */
  public Optional<DetailKind> split() {
    return lines.get(0).of().split();
  }

  /** What the lines are, as the head of their column. */
  public String head() {
    return split().map(DetailKind::heading).orElseGet(() -> say("answer.head-of-methods"));
  }

  /** The alert for rows of several methods; empty where there is one method or none. */
  public static Optional<ComparisonAlert> of(List<SelectedRow> rows) {
    return of(
        rows, Method.vocabulary().all().stream().map(GroupName::of).toList(), Optional.empty());
  }

  /** The alert for rows of one method that differ in a detail; empty where they do not. */
  static Optional<ComparisonAlert> of(List<SelectedRow> rows, DetailKind split) {
    return rows.stream()
        .findFirst()
        .map(row -> row.arm().method().principal())
        .flatMap(method -> of(rows, GroupName.all(method, split), Optional.of(split)));
  }

  /** The alert for what an answer pools by itself. */
  public static Optional<ComparisonAlert> of(Answer answer, Result result) {
    List<SelectedRow> rows = answer.selection().rows();
    return Blocks.split(result).map(split -> of(rows, split)).orElseGet(() -> of(rows));
  }

  private static Optional<ComparisonAlert> of(
      List<SelectedRow> rows, List<GroupName> order, Optional<DetailKind> split) {
    Map<GroupName, List<SelectedRow>> groups =
        rows.stream()
            .filter(row -> !row.isOfSeveralMethods())
            .collect(
                Collectors.groupingBy(
                    row -> GroupName.of(row, row.arm().method().principal(), split)));
    List<Line> lines =
        order.stream()
            .filter(groups::containsKey)
            .map(name -> line(name, groups.getOrDefault(name, List.of())))
            .toList();
    return lines.size() < 2 ? Optional.empty() : Optional.of(new ComparisonAlert(lines));
  }

  private static Line line(GroupName of, List<SelectedRow> rows) {
    return new Line(
        of, rows.size(), patients(rows), bone(rows), infected(rows), followed(rows), designs(rows));
  }

  private static String patients(List<SelectedRow> rows) {
    List<Integer> known = rows.stream().flatMap(row -> row.speaksOf().stream().boxed()).toList();
    int sum = known.stream().mapToInt(Integer::intValue).sum();
    if (known.isEmpty()) {
      return say("answer.not-given");
    }
    return known.size() == rows.size()
        ? Counted.grouped(sum)
        : say(
            "answer.sum-of-some", Map.of("sum", sum, "known", known.size(), "series", rows.size()));
  }

  private static String bone(List<SelectedRow> rows) {
    List<ArmDefect> defects = rows.stream().flatMap(row -> row.defect().stream()).toList();
    List<Double> middles =
        defects.stream()
            .map(defect -> defect.length().centreCentimetres())
            .filter(OptionalDouble::isPresent)
            .map(OptionalDouble::getAsDouble)
            .toList();
    String words = spread(middles, rows.size(), Shown::centimetres, "cm");
    List<LengthRange> ranges =
        defects.stream()
            .flatMap(defect -> defect.length().reportedRange().stream())
            .filter(range -> Double.isFinite(range.toCentimetres())) // "over 4 cm" is no spread
            .toList();
    if (ranges.isEmpty()) {
      return words;
    }
    double shortest = ranges.stream().mapToDouble(LengthRange::fromCentimetres).min().orElse(0);
    double longest = ranges.stream().mapToDouble(LengthRange::toCentimetres).max().orElse(0);
    String from = Shown.centimetres(shortest);
    String to = Shown.centimetres(longest);
    // One patient, or all alike, has no spread to tell.
    return from.equals(to)
        ? words
        : say("answer.middle-and-spread", Map.of("middle", words, "from", from, "to", to));
  }

  private static String infected(List<SelectedRow> rows) {
    List<EventCount> known =
        rows.stream()
            .filter(row -> !row.isOfPart()) // printed of the whole group, not of these patients
            .flatMap(row -> ArmInfection.of(row.study(), row.arm()).count().stream())
            .toList();
    int events = known.stream().mapToInt(count -> count.events().getAsInt()).sum();
    int total = known.stream().mapToInt(count -> count.total().getAsInt()).sum();
    if (total == 0) {
      return say("answer.not-counted");
    }
    String share = Shown.of100((double) events / total);
    return known.size() == rows.size()
        ? say("answer.share", Map.of("events", events, "total", total, "share", share))
        : say(
            "answer.share-of-some",
            Map.of(
                "events", events,
                "total", total,
                "share", share,
                "known", known.size(),
                "series", rows.size()));
  }

  private static String followed(List<SelectedRow> rows) {
    List<Double> months =
        rows.stream()
            .flatMap(row -> ArmFollowUp.of(row.study(), row.arm()).stream())
            .map(ArmFollowUp::centreMonths)
            .filter(OptionalDouble::isPresent)
            .map(OptionalDouble::getAsDouble)
            .toList();
    return spread(months, rows.size(), Shown::months, "months");
  }

  private static String designs(List<SelectedRow> rows) {
    Map<Design, Integer> counts = new EnumMap<>(Design.class);
    rows.forEach(row -> row.study().design().ifPresent(d -> counts.merge(d, 1, Integer::sum)));
    String words =
        counts.entrySet().stream()
            .map(
                entry ->
                    say(
                        "answer.studies-of-design",
                        Map.of("design", entry.getKey().label(), "studies", entry.getValue())))
            .collect(Collectors.joining(", "));
    return words.isEmpty() ? say("answer.not-given") : words;
  }

  /** The middle of some means and medians and how far they reach. */
  private static String spread(
      List<Double> values, int series, DoubleFunction<String> shown, String unit) {
    if (values.isEmpty()) {
      return say("answer.no-middle");
    }
    List<Double> sorted = values.stream().sorted().toList();
    int half = sorted.size() / 2;
    double middle =
        sorted.size() % 2 == 1 ? sorted.get(half) : (sorted.get(half - 1) + sorted.get(half)) / 2;
    Map<String, Object> places = new HashMap<>();
    places.put("middle", shown.apply(middle));
    places.put("unit", unit);
    boolean all = sorted.size() == series;
    if (!all) {
      places.put("known", sorted.size());
      places.put("series", series);
    }
    if (sorted.size() == 1) {
      return say(all ? "answer.middle-of-one" : "answer.middle-of-one-given", places);
    }
    places.put("least", shown.apply(sorted.get(0)));
    places.put("most", shown.apply(sorted.get(sorted.size() - 1)));
    return say(all ? "answer.middle" : "answer.middle-of-some", places);
  }
}
