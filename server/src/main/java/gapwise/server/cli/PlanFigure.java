package gapwise.server.cli;

import gapwise.analysis.Result;
import gapwise.answer.AnswerForest;
import gapwise.answer.Edition;
import gapwise.answer.PlainForest;
import gapwise.figure.Forest;
import gapwise.figure.ForestDrawing;
import gapwise.figure.ForestTable;
import gapwise.figure.Medium;
import gapwise.server.home.Home;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Draws the result of a plan into a folder: NAME.svg and NAME.csv, named after the plan. */
final class PlanFigure {
  private PlanFigure() {}

  static void write(Path folder, Path plan, Result result, Optional<Home> home) throws IOException {
    Optional<Forest> forest = forest(result, home);
    if (forest.isEmpty()) {
      System.err.println(plan + ": this task has no forest plot.");
      return;
    }
    Files.createDirectories(folder);
    String name = ("" + plan.getFileName()).replaceFirst("\\.json$", "");
    Files.writeString(
        folder.resolve(name + ".svg"), ForestDrawing.draw(forest.get(), Medium.PAGE).get(0).svg());
    Files.writeString(folder.resolve(name + ".csv"), ForestTable.of(forest.get()).csv());
  }

  private static Optional<Forest> forest(Result result, Optional<Home> home) {
    if (result.studies().isEmpty()) {
      return Optional.empty();
    }
    return home.flatMap(open -> open.answers().of(result))
        .map(answer -> AnswerForest.of(answer, result, home.orElseThrow().edition(Version.NUMBER)))
        .or(() -> Optional.of(PlainForest.of(result, Edition.ofProgram(Version.NUMBER))));
  }
}
