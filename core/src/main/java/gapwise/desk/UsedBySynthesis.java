package gapwise.desk;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.AllGroups;
import gapwise.evidence.Arm;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Study;
import gapwise.exchange.Template;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * What the numbers of a draft would be worth to a synthesis, at their fields: the mean and standard
 * deviation that it would take, by which method, or why nothing enters. Worked out by what fills
 * the rows of a plan; what is stored stays as printed. Of a mean with its own standard deviation
 * nothing is told, since it is taken as it stands.
 */
public final class UsedBySynthesis {
  private UsedBySynthesis() {}

  /** All that is to be told of a draft, in the order of its rows. */
  public static List<Noted> of(Draft draft) {
    Optional<RowsOfDraft> read = RowsOfDraft.of(draft);
    List<Noted> told = new ArrayList<>();
    if (read.isPresent()) {
      Study study = read.get().study();
      draft.rows(Template.ARMS).forEach(row -> told.addAll(UsedBaseline.of(study, row)));
      draft
          .rows(Template.OUTCOMES)
          .forEach(
              row ->
                  read.get()
                      .report(row)
                      .flatMap(report -> told(study, row, report))
                      .ifPresent(told::add));
    }
    return List.copyOf(told);
  }

  private static Optional<Noted> told(Study study, DraftRow row, OutcomeReport report) {
    if (report.value() instanceof ReportedValue.Quantity quantity) {
      return UsedQuantity.of(study, row, report, quantity.summary());
    }
    return report.value() instanceof ReportedValue.Effect effect
        ? Optional.of(UsedEffect.of(row, effect))
        : Optional.empty();
  }

  /**
   * One thing to tell.
   *
   * @param columns the field it stands at first, then the others it speaks of
   * @param sentences whole ones, in their order
   */
  static Noted noted(DraftRow row, Stream<String> columns, List<String> sentences) {
    return new Noted(
        Noted.Weight.USED,
        OptionalInt.of(row.number()),
        columns.filter(column -> !row.text(column).isEmpty()).toList(),
        "used-by-synthesis",
        String.join(" ", sentences),
        Optional.empty());
  }

  /** The group of a row, or all groups as one; empty where the draft has no such group. */
  static Optional<Arm> arm(Study study, DraftRow row) {
    String id = row.text(Template.ARM);
    return id.equals(Template.ALL) ? Optional.of(AllGroups.of(study)) : study.arm(id);
  }

  /** What every sentence about numbers not used says at its end. */
  static String asPrinted() {
    return say("desk.used-as-printed");
  }
}
