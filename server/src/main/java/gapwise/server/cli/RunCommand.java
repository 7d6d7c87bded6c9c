package gapwise.server.cli;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.result.Origin;
import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.budget.Budget;
import gapwise.budget.Work;
import gapwise.budget.WorkStoppedException;
import gapwise.figure.drawing.Medium;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.report.MethodsParagraph;
import gapwise.server.home.Evidence;
import gapwise.server.home.Origins;
import gapwise.server.home.Reading;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Runs analysis plans and prints their results. */
@Command(
    name = "run",
    description = "Run analysis plans and print each result as JSON.",
    mixinStandardHelpOptions = true)
public final class RunCommand implements Callable<Integer> {
  @Parameters(arity = "1..*", paramLabel = "PLAN", description = "Plans as JSON files.")
  private List<Path> plans;

  @Option(
      names = "--home",
      paramLabel = "DIR",
      description = "Folder of the evidence base, for plans that select from it.")
  private Optional<Path> home = Optional.empty();

  @Mixin private DatabaseOption database;

  @Option(
      names = "--figures",
      paramLabel = "DIR",
      description = "Folder to draw each result into, named after its plan.")
  private Optional<Path> figures = Optional.empty();

  @Option(
      names = "--methods",
      description =
          "Print the methods in words, as a journal prints them, in place of each result.")
  private boolean methods;

  @Option(
      names = "--figures-for",
      paramLabel = "MEDIUM",
      defaultValue = "page",
      description =
          "What figures are drawn for: slide, column, two-columns, a4, page, phone;"
              + " ${DEFAULT-VALUE} unless said.")
  private String medium = "page";

  @Option(
      names = LimitOption.OPTION,
      paramLabel = "LIMIT",
      description = {
        "Another limit of what one plan may cost, such as seconds=600; may be given several times."
            + " 'none' takes all limits away. docs/plan.md lists them."
      })
  private List<String> limits = List.of();

  @Override
  public Integer call() throws IOException {
    if (Medium.of(medium).isEmpty()) {
      System.err.println("--figures-for: '" + medium + "'; expected one of " + Medium.codes());
      return Exit.WRONG;
    }
    Budget budget;
    try {
      budget = LimitOption.of(limits);
    } catch (WrongInputException wrong) {
      wrong.problems().forEach(problem -> System.err.println(problem.line()));
      return Exit.WRONG;
    }
    if (home.isEmpty() && database.isGiven()) {
      System.err.println("Name the evidence base with --home too; its index is kept there.");
      return Exit.WRONG;
    }
    if (home.isEmpty()) {
      Runner alone = Runner.withoutEvidence();
      return runAll(
          (text, folder) -> new Answers.Ran(alone.run(text, folder), Optional.empty()),
          Edition.ofProgram(Version.NUMBER),
          budget);
    }
    try (Reading reading = Reading.of(database.with(home.get()), Clock.systemUTC())) {
      Evidence evidence = reading.evidence();
      return runAll(evidence.answers()::run, evidence.edition(Version.NUMBER), budget);
    }
  }

  /** Runs the text of a plan, whose tables lie in a folder. */
  private interface Running {
    Answers.Ran run(String text, Optional<Path> folder);
  }

  private int runAll(Running running, Edition edition, Budget budget) throws IOException {
    int exit = Exit.DONE;
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    for (Path plan : plans) {
      Answers.Ran ran = run(running, plan, budget);
      out.println(printed(ran.outcome(), Origins.of(edition)));
      if (ran.outcome() instanceof PlanOutcome.Wrong wrong) {
        wrong.problems().forEach(problem -> System.err.println(plan + ": " + problem.line()));
        exit = Exit.WRONG;
      } else if (figures.isPresent()) {
        Medium drawn = Medium.of(medium).orElseThrow();
        PlanFigure.write(figures.get(), plan, drawn, ran, edition);
      }
    }
    return exit;
  }

  /** The methods in words if they are asked for and there is a result, else the JSON. */
  private String printed(PlanOutcome outcome, Origin origin) {
    if (methods && outcome instanceof PlanOutcome.Done done) {
      return MethodsParagraph.of(done.result(), origin).text();
    }
    JsonNode json = outcome.json(origin);
    return plans.size() == 1 ? json.toPrettyString() : json.toString();
  }

  private static Answers.Ran run(Running running, Path plan, Budget budget) {
    try {
      return Work.within(budget).join(() -> run(running, plan));
    } catch (WorkStoppedException stopped) {
      return wrong(stopped.problem());
    }
  }

  private static Answers.Ran wrong(Problem problem) {
    return new Answers.Ran(new PlanOutcome.Wrong(List.of(problem)), Optional.empty());
  }

  private static Answers.Ran run(Running running, Path plan) {
    String text;
    try {
      text = Files.readString(plan);
    } catch (IOException unread) {
      return wrong(
          new Problem(
              "" + plan,
              "unreadable-file",
              "The plan cannot be read as UTF-8 text; check its name and that you may read it."));
    }
    Path folder = Optional.ofNullable(plan.toAbsolutePath().getParent()).orElse(plan);
    return running.run(text, Optional.of(folder));
  }
}
