package gapwise.server.cli;

import gapwise.analysis.PlanOutcome;
import gapwise.analysis.result.Result;
import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.answer.ResultFigures;
import gapwise.figure.Figure;
import gapwise.figure.drawing.Medium;
import gapwise.figure.file.FigureFile;
import gapwise.figure.file.FileKind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

/**
 * Draws the result of a plan into a folder, named after the plan: NAME.svg, NAME.png and NAME.csv
 * for its first figure, NAME-funnel.svg and so on for further ones; further sheets are numbered.
 */
final class PlanFigure {
  private PlanFigure() {}

  static void write(Path folder, Path plan, Medium medium, Answers.Ran ran, Edition edition)
      throws IOException {
    Result result = ((PlanOutcome.Done) ran.outcome()).result();
    Map<String, Figure> figures = ResultFigures.of(result, ran.answer(), edition);
    if (figures.isEmpty()) {
      System.err.println(plan + ": the result of this plan has nothing to draw.");
      return;
    }
    Files.createDirectories(folder);
    String name = ("" + plan.getFileName()).replaceFirst("\\.json$", "");
    String first = figures.keySet().iterator().next();
    for (Map.Entry<String, Figure> each : figures.entrySet()) {
      String stem = each.getKey().equals(first) ? name : name + "-" + each.getKey();
      write(folder, stem, medium, each.getValue());
    }
  }

  private static void write(Path folder, String stem, Medium medium, Figure figure)
      throws IOException {
    for (FileKind kind : FileKind.values()) {
      boolean drawn = kind == FileKind.SVG || kind == FileKind.PNG;
      boolean citations = !drawn && kind != FileKind.CSV;
      int sheets = drawn ? figure.sheets(medium) : citations && nobody(figure) ? 0 : 1;
      for (int sheet = 1; sheet <= sheets; sheet++) {
        FigureFile.Wish wish = new FigureFile.Wish(medium, sheet, Optional.empty());
        String file = stem + (sheet == 1 ? "" : "-" + sheet) + kind.ending();
        Files.write(folder.resolve(file), FigureFile.of(figure, kind, wish));
      }
    }
  }

  private static boolean nobody(Figure figure) {
    return figure.references().isEmpty();
  }
}
