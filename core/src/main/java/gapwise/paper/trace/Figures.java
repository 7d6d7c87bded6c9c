package gapwise.paper.trace;

import gapwise.budget.Work;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.Page;
import gapwise.paper.trace.CurveNames.Name;
import gapwise.paper.trace.DrawnCurves.Curve;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Proposes what the figures of a page show, where the page holds them as lines and words. */
public final class Figures {
  private Figures() {}

  /** Figures with two numbered axes, from top to bottom. */
  public static List<FigureProposal> on(Page page) {
    List<FigureProposal> proposals = new ArrayList<>();
    for (PlotArea area : PlotArea.on(page)) {
      Work.check();
      FigureProposal proposal = proposal(area);
      if (!proposal.curves().isEmpty() || !proposal.points().isEmpty()) {
        proposals.add(proposal);
      }
    }
    return List.copyOf(proposals);
  }

  private static FigureProposal proposal(PlotArea area) {
    DrawnCurves drawn = DrawnCurves.in(area);
    Axes axes = area.axes();
    List<AtRiskRow> rows = AtRiskRow.under(area);
    List<CurveProposal> curves = curves(area, drawn, axes, rows);
    List<List<DataPoint>> points = curves.isEmpty() ? DrawnSigns.in(area, axes) : List.of();
    List<String> questions = new ArrayList<>();
    questions.add(
        "The axes were read from the numbers "
            + area.below().first().word().text()
            + " to "
            + area.below().last().word().text()
            + " below and "
            + area.beside().first().word().text()
            + " to "
            + area.beside().last().word().text()
            + " beside the figure. Confirm them.");
    if (area.axes().x().scale() == Scale.LOG || area.besideScale() == Scale.LOG) {
      questions.add("An axis seems to be logarithmic by the places of its numbers. Confirm it.");
    }
    if (area.unit().isEmpty() && !curves.isEmpty()) {
      questions.add("No words below the figure tell the unit of time. Choose it.");
    }
    if (rows.size() > curves.size() && !curves.isEmpty()) {
      questions.add(
          "There are "
              + rows.size()
              + " rows of numbers at risk, but "
              + curves.size()
              + (curves.size() == 1 ? " curve was" : " curves were")
              + " found. Trace the others by hand.");
    }
    return new FigureProposal(
        area.page().number(),
        area.caption(),
        area.box(),
        axes,
        area.unit(),
        area.besideTitle(),
        curves,
        points,
        questions);
  }

  private static List<CurveProposal> curves(
      PlotArea area, DrawnCurves drawn, Axes axes, List<AtRiskRow> rows) {
    CurveNames names = new CurveNames(area, drawn, rows);
    List<Name> all = names.names();
    List<CurveProposal> curves = new ArrayList<>();
    for (int i = 0; i < drawn.curves().size(); i++) {
      Curve curve = drawn.curves().get(i);
      List<DataPoint> data = snapped(curve, axes, area);
      if (Steps.of(data) instanceof Steps.Found found) {
        Name name = all.get(i);
        List<Double> seen = curve.marks().stream().map(m -> Math.max(0, axes.at(m).x())).toList();
        curves.add(
            new CurveProposal(
                name.text(),
                found.steps(),
                seen,
                names.row(name),
                questions(curve, name, found.steps(), names.row(name), drawn)));
      }
    }
    return curves;
  }

  /** In data, corners of one upright piece get one time, so that rounding makes no slopes. */
  private static List<DataPoint> snapped(Curve curve, Axes axes, PlotArea area) {
    List<DataPoint> data = new ArrayList<>();
    double lastX = Double.NaN;
    double time = 0;
    for (Point point : curve.points()) {
      DataPoint at = axes.at(point);
      if (!(Math.abs(point.x() - lastX) < 0.05)) {
        time =
            Math.abs(point.x() - area.box().left()) < 0.6
                ? Math.max(0, Math.rint(at.x() * 20) / 20)
                : at.x();
      }
      lastX = point.x();
      double share = Math.abs(at.y() - 1) < 0.002 ? 1 : Math.abs(at.y()) < 0.002 ? 0 : at.y();
      data.add(new DataPoint(time, share));
    }
    return data;
  }

  private static List<String> questions(
      Curve curve, Name name, Steps steps, Optional<AtRiskRow> row, DrawnCurves drawn) {
    List<String> questions = new ArrayList<>();
    if (name.text().isEmpty()) {
      questions.add("No words name this curve. Choose its group.");
    } else if (!name.sure()) {
      questions.add(
          "The name " + name.text() + " was told by its place beside the curve. Confirm it.");
    } else {
      questions.add("Confirm that the curve is that of " + name.text() + ".");
    }
    if (steps.rises()) {
      questions.add(
          "The curve rises, so it was taken for the share with the event and turned round."
              + " Confirm it; where another event can come first, it may not be turned.");
    }
    if (!curve.isStepped()) {
      questions.add(
          "The curve runs aslant between its points, so it is no curve of steps. Each point was"
              + " taken for a drop, which makes times of events uncertain.");
    }
    long alike = drawn.curves().stream().filter(c -> c.look().looksLike(curve.look())).count();
    if (alike > 1) {
      questions.add(
          "Another curve is drawn alike, so one may be a limit of the other. Choose which counts.");
    }
    if (row.isEmpty()) {
      questions.add(
          "No numbers at risk could be told for this curve. Give the number of patients.");
    }
    return questions;
  }
}
