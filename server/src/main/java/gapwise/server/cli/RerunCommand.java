package gapwise.server.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.budget.Budget;
import gapwise.datapackage.PackageReader;
import gapwise.datapackage.PackageWriter;
import gapwise.problem.WrongInputException;
import gapwise.store.OwnerOnly;
import gapwise.supplement.Difference;
import gapwise.supplement.Rerun;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Runs a supplement again. */
@Command(
    name = "rerun",
    description = {
      "Run every plan of a supplement again, on the data of the supplement alone, and compare every"
          + " number of every result. No evidence base is needed.",
      "Ends with 0 when all numbers are equal; with 2 when one is not, or the supplement is damaged;"
          + " with 1 when it broke off."
    },
    mixinStandardHelpOptions = true)
public final class RerunCommand implements Callable<Integer> {
  /** Of one result; the rest is in the results that --to writes. */
  private static final int MOST_PRINTED = 20;

  @Parameters(paramLabel = "SUPPLEMENT", description = "Folder or archive (.zip).")
  private Path supplement;

  @Option(
      names = "--to",
      paramLabel = "FOLDER",
      description = "New folder for the results as they came out now.")
  private Optional<Path> target = Optional.empty();

  @Option(
      names = LimitOption.OPTION,
      paramLabel = "LIMIT",
      description =
          "Another limit of what one plan may cost, such as seconds=600; may be given several times."
              + " 'none' takes all limits away.")
  private List<String> limits = List.of();

  @Override
  public Integer call() throws IOException {
    if (target.filter(Files::exists).isPresent()) {
      System.err.println(target.get() + " is there already; name a new folder.");
      return Exit.WRONG;
    }
    try {
      Budget budget = LimitOption.of(limits);
      try (PackageReader reader = PackageReader.open(supplement)) {
        Rerun.Done done = Rerun.of(reader, Version.NUMBER, budget);
        tell(done);
        if (target.isPresent()) {
          write(target.get(), done);
        }
        return done.equal() ? Exit.DONE : Exit.WRONG;
      }
    } catch (WrongInputException wrong) {
      wrong.problems().forEach(problem -> System.err.println(problem.line()));
      System.err.println("The supplement is not as it was written, so nothing was compared.");
      return Exit.WRONG;
    }
  }

  private static void tell(Rerun.Done done) {
    if (done.invented()) {
      System.err.println("The studies in it are invented for demonstration.");
    }
    if (!done.sameProgram()) {
      System.err.println(
          "It was made by version "
              + done.program()
              + ", and this is version "
              + Version.NUMBER
              + ": numbers may differ by "
              + Rerun.TOLERANCE_BETWEEN_VERSIONS
              + " of their size.");
    }
    for (Rerun.Compared one : done.analyses()) {
      one.problems()
          .forEach(problem -> System.err.println(one.name() + ": no result. " + problem.line()));
      some(one.name(), "number", one.moved());
      some(one.name(), done.sameProgram() ? "text" : "text, which counts for nothing", one.words());
    }
    long moved = done.analyses().stream().filter(one -> !one.moved().isEmpty()).count();
    long without = done.analyses().stream().filter(one -> !one.problems().isEmpty()).count();
    System.err.println(
        done.analyses().size()
            + " results from "
            + done.studies()
            + " studies, "
            + done.numbers()
            + " numbers compared: "
            + (done.equal()
                ? "all equal."
                : moved + " results have other numbers, " + without + " have none."));
  }

  private static void some(String name, String what, List<Difference> differences) {
    for (Difference one : differences.subList(0, Math.min(MOST_PRINTED, differences.size()))) {
      System.err.println(
          name + ": " + what + ": " + one.field() + " was " + one.before() + ", is " + one.after());
    }
    if (differences.size() > MOST_PRINTED) {
      System.err.println(name + ": and " + (differences.size() - MOST_PRINTED) + " more");
    }
  }

  private static void write(Path folder, Rerun.Done done) throws IOException {
    OwnerOnly.folders(folder);
    for (Rerun.Compared one : done.analyses()) {
      if (one.result().isPresent() && one.result().get() instanceof ObjectNode json) {
        try (OutputStream file = OwnerOnly.newFile(folder.resolve(one.name() + ".json"))) {
          file.write(PackageWriter.text(json).getBytes(StandardCharsets.UTF_8));
        }
      }
    }
  }
}
