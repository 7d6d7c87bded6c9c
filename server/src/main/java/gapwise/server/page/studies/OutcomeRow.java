package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.Arm;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Outcome;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Reported numbers of one outcome that are read in the same way, as a row of the table of a study.
 *
 * @param outcome of what
 * @param notes what must be known to read every number of the row
 * @param cells from left to right; together as wide as the table
 */
public record OutcomeRow(Outcome outcome, String notes, List<Cell> cells) {
  public OutcomeRow {
    cells = List.copyOf(cells);
  }

  /**
   * What stands in one place.
   *
   * @param head for whom
   * @param width how many columns it spans
   * @param line the number; empty where the paper reports none
   */
  public record Cell(String head, int width, Optional<OutcomeLine> line) {
    /** Whom the number is of, where that is more than its column says; else an empty text. */
    public String together() {
      return width > 1 ? head : "";
    }
  }

  /** The rows of a study as its numbers are recorded, those of one outcome below each other. */
  static List<OutcomeRow> of(Study study) {
    List<Gathered> rows = new ArrayList<>();
    for (OutcomeReport report : study.outcomes()) {
      OutcomeLine line = OutcomeLine.of(report);
      Optional<Integer> column = column(study, report.scope());
      if (column.isEmpty()) {
        rows.add(new Gathered(line, Optional.of(together(study, report.scope())), List.of()));
        continue;
      }
      Optional<Gathered> known =
          rows.stream().filter(row -> row.takes(line, column.get())).findFirst();
      Gathered row = known.orElseGet(() -> new Gathered(line, Optional.empty(), new ArrayList<>()));
      row.placed().add(new Placed(column.get(), line));
      if (known.isEmpty()) {
        rows.add(row);
      }
    }
    return rows.stream()
        .collect(
            Collectors.groupingBy(
                row -> row.first().outcome(), LinkedHashMap::new, Collectors.toList()))
        .values()
        .stream()
        .flatMap(List::stream)
        .map(row -> row.row(study))
        .toList();
  }

  /** A number and the column of its group. */
  private record Placed(int column, OutcomeLine line) {}

  /** A row that is being put together: of single groups, or of several at once. */
  private record Gathered(OutcomeLine first, Optional<String> together, List<Placed> placed) {
    boolean takes(OutcomeLine line, int column) {
      return together.isEmpty()
          && first.outcome().equals(line.outcome())
          && first.notes().equals(line.notes())
          && placed.stream().noneMatch(one -> one.column() == column);
    }

    OutcomeRow row(Study study) {
      List<Arm> arms = study.arms();
      if (together.isPresent()) {
        return row(List.of(new Cell(together.get(), arms.size(), Optional.of(first))));
      }
      List<Cell> cells = new ArrayList<>();
      for (int at = 0; at < arms.size(); at++) {
        int column = at;
        cells.add(
            new Cell(
                arms.size() == 1 ? "" : name(arms.get(at)),
                1,
                placed.stream()
                    .filter(one -> one.column() == column)
                    .map(Placed::line)
                    .findFirst()));
      }
      return row(cells);
    }

    private OutcomeRow row(List<Cell> cells) {
      return new OutcomeRow(first.outcome(), first.notes(), cells);
    }
  }

  private static Optional<Integer> column(Study study, Scope scope) {
    if (!(scope instanceof Scope.OneArm one)) {
      return Optional.empty();
    }
    return study.arm(one.arm()).map(arm -> study.arms().indexOf(arm));
  }

  private static String together(Study study, Scope scope) {
    if (scope instanceof Scope.Comparison pair) {
      return say(
          "studies.one-against-other",
          Map.of("one", arm(study, pair.arm()), "other", arm(study, pair.against())));
    }
    return scope instanceof Scope.OneArm one ? one.arm() : say("studies.all-groups");
  }

  private static String arm(Study study, String id) {
    return study.arm(id).map(OutcomeRow::name).orElse(id);
  }

  private static String name(Arm arm) {
    return arm.label().orElse(arm.method().principal().shortLabel());
  }
}
