package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.figure.value.SeriesCount;
import gapwise.selection.SelectedRow;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** How many patients, limbs or defects the numbers of some rows speak of. */
public final class People {
  private People() {}

  /** How many the rows speak of, "212 limbs", in the unit that they all count. */
  public static String of(List<SelectedRow> rows) {
    int sum = number(rows);
    List<CountedUnit> units = units(rows);
    if (units.size() != 1) {
      return say("told.patients-or-limbs", Map.of("number", sum));
    }
    return switch (units.get(0)) {
      case PATIENTS -> patients(sum);
      case LIMBS -> say("told.limbs", Map.of("number", sum));
      case DEFECTS -> say("told.defects", Map.of("number", sum));
    };
  }

  /** How many groups the rows are, and of how many studies. */
  public static SeriesCount series(List<SelectedRow> rows) {
    long studies = rows.stream().map(row -> row.study().id()).distinct().count();
    return new SeriesCount(rows.size(), (int) studies);
  }

  /** "212 patients". */
  static String patients(long number) {
    return say("told.patients", Map.of("number", number));
  }

  /** How many the rows speak of. */
  static int number(List<SelectedRow> rows) {
    return rows.stream().mapToInt(row -> row.speaksOf().orElse(0)).sum();
  }

  /** How many events the rows count together; empty where one counts none. */
  static OptionalInt events(List<SelectedRow> rows) {
    int sum = 0;
    for (SelectedRow row : rows) {
      if (row.value() instanceof ReportedValue.Events events && events.count().isComplete()) {
        sum += events.count().events().orElseThrow();
      } else if (row.value() instanceof ReportedValue.Categories grades) {
        sum += grades.good();
      } else if (row.value() instanceof ReportedValue.Tally tally) {
        sum += tally.events();
      } else {
        return OptionalInt.empty();
      }
    }
    return OptionalInt.of(sum);
  }

  private static List<CountedUnit> units(List<SelectedRow> rows) {
    return rows.stream()
        .map(row -> row.report().flatMap(OutcomeReport::counted).orElse(CountedUnit.PATIENTS))
        .distinct()
        .toList();
  }

  /** What all rows count, as a plural; empty where they count several things. */
  static String unit(List<SelectedRow> rows) {
    List<CountedUnit> units = units(rows);
    return units.size() == 1 ? units.get(0).label() : "";
  }
}
