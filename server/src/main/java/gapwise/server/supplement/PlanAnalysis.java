package gapwise.server.supplement;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.plan.PlanText;
import gapwise.answer.Answers;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.supplement.Analysis;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** A plan in a file as an analysis of a supplement. */
final class PlanAnalysis {
  private PlanAnalysis() {}

  /**
   * Runs it.
   *
   * @throws WrongInputException naming the file, with what is wrong
   */
  static Analysis of(Path file, Answers answers) {
    Path folder = Objects.requireNonNullElse(file.toAbsolutePath().getParent(), file);
    try {
      JsonNode plan = PlanText.parse(Files.readString(file));
      if (!(plan instanceof ObjectNode json)) {
        throw wrong(file, "not-a-plan", "A plan is a JSON object.");
      }
      Answers.Ran ran = answers.run(json.toString(), Optional.of(folder));
      if (ran.outcome() instanceof PlanOutcome.Wrong wrong) {
        throw new WrongInputException(wrong.problems());
      }
      String name = ("" + file.getFileName()).replaceFirst("\\.json$", "");
      return Analysis.of(name, json, ran, folder);
    } catch (WrongInputException wrong) {
      throw new WrongInputException(
          wrong.problems().stream().map(problem -> in(file, problem)).toList());
    } catch (IOException unread) {
      throw wrong(
          file,
          "unreadable-file",
          "The plan cannot be read as UTF-8 text; check its name and that you may read it.");
    }
  }

  private static Problem in(Path file, Problem problem) {
    String where = problem.where().isEmpty() ? "" : ", " + problem.where();
    return new Problem(file.getFileName() + where, problem.code(), problem.message());
  }

  private static WrongInputException wrong(Path file, String code, String message) {
    return new WrongInputException(List.of(new Problem("" + file.getFileName(), code, message)));
  }
}
