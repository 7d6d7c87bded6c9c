package gapwise.selection;

import static gapwise.sentence.Sentences.say;

import gapwise.problem.Problem;
import gapwise.selection.SelectedRow.Basis;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What a reader must know of the missing length asked for, before the numbers are put together. */
public final class LengthNotes {
  /** What the note is called that groups do not say whether they have the length asked for. */
  public static final String NOT_SAID = "length-not-said";

  /** What the note is called that of some groups only the patients in the range are counted. */
  public static final String ONLY_IN_RANGE = "only-patients-in-range";

  private LengthNotes() {}

  static List<Problem> on(List<SelectedRow> rows, List<LeftOut> leftOut) {
    List<Problem> notes = new ArrayList<>();
    List<String> inRange =
        rows.stream()
            .filter(row -> row.basis() == Basis.FROM_PATIENTS_IN_RANGE)
            .map(SelectedRow::label)
            .toList();
    if (!inRange.isEmpty()) {
      notes.add(
          new Problem(
              "",
              ONLY_IN_RANGE,
              say(
                  "selection.only-in-range",
                  Map.of("series", inRange.size(), "arms", String.join("; ", inRange)))));
    }
    long oneEnd = count(leftOut, Reason.Plain.LENGTH_ONE_SIDED.code());
    long unknown = count(leftOut, Reason.Plain.LENGTH_UNKNOWN.code());
    if (oneEnd + unknown > 0) {
      notes.add(new Problem("", NOT_SAID, notSaid(oneEnd, unknown)));
    }
    return notes;
  }

  private static String notSaid(long oneEnd, long unknown) {
    Map<String, Long> counts =
        Map.of("groups", oneEnd + unknown, "oneEnd", oneEnd, "unknown", unknown);
    if (unknown == 0) {
      return say("selection.length-one-end", Map.of("groups", oneEnd));
    }
    return oneEnd == 0
        ? say("selection.length-none", Map.of("groups", unknown))
        : say("selection.length-one-end-or-none", counts);
  }

  private static long count(List<LeftOut> leftOut, String code) {
    return leftOut.stream().filter(one -> one.code().equals(code)).count();
  }
}
