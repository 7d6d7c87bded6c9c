package gapwise.figure;

import gapwise.evidence.Arm;
import gapwise.evidence.CountedUnit;
import gapwise.evidence.EventCount;
import gapwise.evidence.ReportedValue;
import gapwise.selection.SelectedRow;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/**
 * What a figure says of a series beyond the numbers of its result.
 *
 * @param label as in the result
 * @param detail second line
 * @param block name of its block
 * @param span missing bone
 * @param counts counts in words
 * @param participants patients or limbs that it speaks of
 * @param counted what they are, where the paper says
 * @param openEnd bound on which its value lies
 * @param href where its name leads
 */
record SeriesFacts(
    String label,
    String detail,
    String block,
    Span span,
    String counts,
    OptionalInt participants,
    Optional<CountedUnit> counted,
    Row.OpenEnd openEnd,
    Optional<String> href) {
  SeriesFacts {
    Objects.requireNonNull(label, "label");
  }

  /** A series of which only the result knows. */
  static SeriesFacts bare(String label, Row.OpenEnd openEnd) {
    return new SeriesFacts(
        label,
        "",
        "",
        new Span.NotReported(),
        "",
        OptionalInt.empty(),
        Optional.empty(),
        openEnd,
        Optional.empty());
  }

  static SeriesFacts of(SelectedRow row, Function<SelectedRow, Optional<String>> href) {
    Arm arm = row.arm();
    return new SeriesFacts(
        row.label(),
        detail(row),
        arm.method().principal().label(),
        DefectSpan.of(row.defect()),
        counts(row),
        row.speaksOf(),
        row.report().flatMap(report -> report.counted()),
        openEnd(row.value()),
        href.apply(row));
  }

  private static String detail(SelectedRow row) {
    StringBuilder words = new StringBuilder(row.study().design().map(d -> d.label()).orElse(""));
    row.arm()
        .baseline()
        .infectedAtStart()
        .ifPresent(
            answer ->
                words
                    .append(words.isEmpty() ? "" : ", ")
                    .append(
                        switch (answer) {
                          case YES -> "all infected at the start";
                          case NO -> "none infected at the start";
                          case MIXED -> "some infected at the start";
                          case UNCLEAR -> "infection at the start unclear";
                        }));
    String basis =
        switch (row.basis()) {
          case REPORTED -> "";
          case COUNTED_BACK -> "counted back from a percentage";
          case FROM_PATIENTS -> "summed up from patients";
          case FROM_PATIENTS_IN_RANGE -> "only its patients in this range";
          case SUBGROUP -> "part of the group";
        };
    return words.append(words.isEmpty() || basis.isEmpty() ? "" : ", ").append(basis).toString();
  }

  private static String counts(SelectedRow row) {
    if (row.value() instanceof ReportedValue.Events events && events.count().isComplete()) {
      EventCount count = events.count();
      return count.events().getAsInt() + " of " + count.total().getAsInt();
    }
    return row.speaksOf().isPresent() ? "" + row.speaksOf().getAsInt() : "";
  }

  private static Row.OpenEnd openEnd(ReportedValue value) {
    if (value instanceof ReportedValue.Events events) {
      double share = events.count().share().orElse(0.5);
      return share == 0 ? Row.OpenEnd.LOW : share == 1 ? Row.OpenEnd.HIGH : Row.OpenEnd.NONE;
    }
    return Row.OpenEnd.NONE;
  }
}
