package gapwise.server.page.figure;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.Draft;
import gapwise.desk.FigureMarks;
import gapwise.desk.ScatterIntoDraft;
import gapwise.desk.ScatterIntoDraft.ScatterOf;
import gapwise.desk.ScatterIntoDraft.Target;
import gapwise.exchange.Template;
import gapwise.problem.Problems;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** What a scatter is of, out of what is typed, or what is wrong with it. */
final class TypedScatter {
  private TypedScatter() {}

  static Optional<ScatterOf> of(FigureFields fields, Draft draft, Problems problems) {
    int before = problems.size();
    String arm = TypedCurve.arm(fields, draft, problems);
    Optional<Target> across = target(fields.text("across"));
    Optional<Target> up = target(fields.text("up"));
    if (across.isEmpty() || up.isEmpty()) {
      problems.add("across", "column-missing", say("figure.column-missing"));
    } else if (across.get().column().equals(up.get().column())) {
      problems.add("across", "columns-equal", say("figure.columns-equal"));
    }
    Optional<String> place = TypedCurve.place(fields, problems);
    return problems.size() > before
        ? Optional.empty()
        : Optional.of(new ScatterOf(arm, across.orElseThrow(), up.orElseThrow(), place));
  }

  private static Optional<Target> target(String name) {
    return ScatterIntoDraft.targets().stream()
        .filter(target -> target.name().equals(name))
        .findFirst();
  }

  static MadeView shown(Draft draft, FigureMarks marks, ScatterOf of, String mark) {
    List<MadeView.Line> lines =
        ScatterIntoDraft.rows(draft, marks, of).stream()
            .map(
                cells ->
                    new MadeView.Line(
                        Objects.requireNonNull(cells.get(Template.PATIENT), Template.PATIENT),
                        Objects.requireNonNull(cells.get(of.across().column()), "across"),
                        Objects.requireNonNull(cells.get(of.up().column()), "up")))
            .toList();
    return new MadeView.Scatter(of.across().label(), of.up().label(), lines, mark);
  }
}
