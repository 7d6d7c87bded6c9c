package gapwise.evidence.rule;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Outcome;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/**
 * One group of numbers of a quantity, wherever it stands in a study.
 *
 * @param summary the numbers
 * @param prefix start of the names of its columns
 * @param part names a part of the record by a column
 * @param neverNegative whether the quantity cannot be negative
 * @param groupSize how many people the arm has, where n is not given
 */
public record SummaryAt(
    QuantitySummary summary,
    String prefix,
    Function<String, RecordPart> part,
    boolean neverNegative,
    OptionalInt groupSize) {

  public static List<SummaryAt> of(Study study) {
    List<SummaryAt> all = new ArrayList<>();
    for (Group group : Group.of(study)) {
      OptionalInt size = group.largestSize();
      add(all, group.baseline().age(), "age_", group::part, true, size);
      add(
          all,
          group.baseline().defect().flatMap(defect -> defect.summary()),
          "defect_length_",
          group::part,
          true,
          size);
      add(all, group.baseline().followUp(), "follow_up_", group::part, true, size);
    }
    for (ReportAt at : ReportAt.of(study)) {
      OptionalInt size =
          at.report().subgroup().isPresent()
              ? OptionalInt.empty()
              : at.group().map(Group::largestSize).orElse(OptionalInt.empty());
      add(all, at.quantity(), "", at::part, neverNegative(at.report().outcome()), size);
    }
    return all;
  }

  private static void add(
      List<SummaryAt> all,
      Optional<QuantitySummary> summary,
      String prefix,
      Function<String, RecordPart> part,
      boolean neverNegative,
      OptionalInt size) {
    summary.ifPresent(s -> all.add(new SummaryAt(s, prefix, part, neverNegative, size)));
  }

  /** A difference in length may be signed, and a score may run below 0. */
  private static boolean neverNegative(Outcome outcome) {
    return outcome.kind() != Outcome.Kind.SCORE
        && !outcome.code().equals("limb-length-discrepancy");
  }

  public RecordPart at(String column) {
    return part.apply(prefix + column);
  }

  /** How many the numbers describe: as printed beside them, else the size of the arm. */
  public OptionalInt people() {
    return summary.n().isPresent() ? summary.n() : groupSize;
  }
}
