package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.Subgroup;
import gapwise.selection.SelectedRow;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** Which patients of its arm a row means, where it does not mean all. */
public final class PatientsMeant {
  private PatientsMeant() {}

  /** Such as "only 7 of its 12 patients, those in range"; empty where the whole arm is meant. */
  public static Optional<String> words(SelectedRow row) {
    return switch (row.basis()) {
      case REPORTED, COUNTED_BACK, FROM_PATIENTS -> Optional.empty();
      case FROM_PATIENTS_IN_RANGE -> Optional.of(inRange(row));
      case SUBGROUP ->
          row.report()
              .flatMap(report -> report.subgroup())
              .map((Subgroup part) -> say("answer.row-only", Map.of("part", part.words())));
    };
  }

  /** A row by name, with which of its patients are meant where that is not all. */
  static String named(SelectedRow row) {
    return words(row)
        .map(who -> say("answer.series-of-whom", Map.of("series", row.label(), "who", who)))
        .orElse(row.label());
  }

  private static String inRange(SelectedRow row) {
    OptionalInt inside = row.speaksOf();
    OptionalInt all = row.arm().baseline().patients();
    return inside.isPresent() && all.isPresent() && inside.getAsInt() < all.getAsInt()
        ? say(
            "answer.row-some-in-range", Map.of("inside", inside.getAsInt(), "all", all.getAsInt()))
        : say("answer.row-patients-in-range");
  }
}
