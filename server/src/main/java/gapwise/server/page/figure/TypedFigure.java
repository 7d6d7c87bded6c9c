package gapwise.server.page.figure;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.FigureMarks;
import gapwise.desk.FigurePoints;
import gapwise.paper.Box;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.trace.Axes;
import gapwise.paper.trace.Axis;
import gapwise.paper.trace.DataPoint;
import gapwise.paper.trace.Scale;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The marks of a figure out of what is typed, or what is wrong with them. */
final class TypedFigure {
  private TypedFigure() {}

  /** The axes; empty where they are not sound, which is told then. */
  static Optional<Axes> axes(FigureFields fields, Box picture, Problems problems) {
    Optional<Axis> x = axis(fields, "x", say("figure.axis-x"), picture, problems);
    Optional<Axis> y = axis(fields, "y", say("figure.axis-y"), picture, problems);
    if (x.isEmpty() || y.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(Axes.of(x.get(), y.get()));
    } catch (WrongInputException wrong) {
      wrong.problems().forEach(problem -> problems.add(named(problem)));
      return Optional.empty();
    }
  }

  /** The core names no axis in its sentences. */
  private static Problem named(Problem problem) {
    String where = problem.where();
    String axis =
        where.endsWith(".x")
            ? say("figure.axis-x") + ": "
            : where.endsWith(".y") ? say("figure.axis-y") + ": " : "";
    return new Problem(problem.where(), problem.code(), axis + problem.message());
  }

  private static Optional<Axis> axis(
      FigureFields fields, String name, String title, Box picture, Problems problems) {
    Optional<Axis.Mark> first = mark(fields, name + "1", title, picture, problems);
    Optional<Axis.Mark> second = mark(fields, name + "2", title, picture, problems);
    Scale scale =
        switch (fields.text(name + "-scale")) {
          case "log" -> Scale.LOG;
          case "percent" -> Scale.PERCENT;
          default -> Scale.LINEAR;
        };
    return first.isPresent() && second.isPresent()
        ? Optional.of(new Axis(scale, first.get(), second.get()))
        : Optional.empty();
  }

  private static Optional<Axis.Mark> mark(
      FigureFields fields, String name, String title, Box picture, Problems problems) {
    String which = name.endsWith("1") ? say("figure.first-mark") : say("figure.second-mark");
    Optional<Point> at = FigureSources.place(fields.text(name + "-at"));
    OptionalDouble value = TypedNumbers.number(fields.text(name + "-value"));
    if (at.isEmpty()) {
      problems.add(
          name + "-at",
          "mark-missing",
          say("figure.mark-missing", Map.of("axis", title, "which", which)));
    } else if (!picture.holds(at.get().x(), at.get().y())) {
      problems.add(
          name + "-at",
          "outside-picture",
          say("figure.mark-outside", Map.of("axis", title, "which", which)));
      return Optional.empty();
    }
    if (value.isEmpty()) {
      problems.add(
          name + "-value",
          "value-missing",
          say("figure.value-missing", Map.of("axis", title, "which", which)));
    }
    return at.isPresent() && value.isPresent()
        ? Optional.of(new Axis.Mark(at.get(), value.getAsDouble()))
        : Optional.empty();
  }

  /** The whole marks; empty where something in them is not sound, which is told then. */
  static Optional<FigureMarks> marks(FigureFields fields, FigureSource source, Problems problems) {
    int before = problems.size();
    Optional<Axes> axes = axes(fields, source.picture(), problems);
    List<DataPoint> printed =
        TypedNumbers.pairs("points", fields.text("points"), FigureMarks.MOST_POINTS, problems);
    if (printed.isEmpty() && fields.text("points").isBlank()) {
      problems.add("points", "points-missing", say("figure.points-missing"));
    }
    if (axes.isEmpty() || problems.size() > before) {
      return Optional.empty();
    }
    try {
      List<Point> places = FigurePoints.places(axes.get(), printed, source.picture());
      return Optional.of(new FigureMarks(source.source(), axes.get().x(), axes.get().y(), places));
    } catch (WrongInputException outside) {
      problems.addAll(outside.problems());
      return Optional.empty();
    }
  }

  /** The area between the marks of both axes, in which a line is followed. */
  static Box plot(Axes axes) {
    Axis x = axes.x();
    Axis y = axes.y();
    return Box.around(
            List.of(
                Box.between(
                    x.first().at().x(), x.first().at().y(),
                    x.second().at().x(), x.second().at().y()),
                Box.between(
                    y.first().at().x(), y.first().at().y(),
                    y.second().at().x(), y.second().at().y())))
        .grown(1);
  }
}
