package gapwise.server.cli;

import gapwise.budget.Work;
import gapwise.budget.WorkStoppedException;
import gapwise.problem.WrongInputException;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Reading;
import gapwise.server.supplement.Supplements;
import gapwise.supplement.SupplementWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes the supplement of a paper. */
@Command(
    name = "supplement",
    description = {
      "Write everything behind results for the supplement of a paper: data, plans, results, figures,"
          + " tables, methods in words and citations, with checksums.",
      "The command rerun runs it again anywhere, and says whether every number is as it was."
    },
    mixinStandardHelpOptions = true)
public final class SupplementCommand implements Callable<Integer> {
  @Mixin private ExistingHomeOption home;

  @ArgGroup(multiplicity = "1")
  private Asked asked = new Asked();

  /** What it is about: one of these. */
  static final class Asked {
    @Option(
        names = "--question",
        paramLabel = "ADDRESS",
        description =
            "What a page tells, by its address, such as '/pooled?outcome=union&method=bone-transport'"
                + " or '/compare?from=4'; without a path it is /pooled.")
    private Optional<String> question = Optional.empty();

    @Option(
        names = "--plans",
        arity = "1..*",
        paramLabel = "PLAN",
        description = "Plans as JSON files.")
    private List<Path> plans = List.of();

    @Option(names = "--all", description = "Every outcome, by the usual plans of the pages.")
    private boolean all;
  }

  @Option(
      names = "--to",
      required = true,
      paramLabel = "FOLDER",
      description = "New folder, or a new archive where the name ends in .zip.")
  private Path target;

  @Option(
      names = LimitOption.OPTION,
      paramLabel = "LIMIT",
      description =
          "Another limit of what all of it together may cost, such as seconds=600; may be given"
              + " several times. Unless said, there is none.")
  private List<String> limits = List.of("none");

  @Override
  public Integer call() throws IOException {
    if (Files.exists(target)) {
      System.err.println(target + " is there already; name a new folder or archive.");
      return Exit.WRONG;
    }
    try (Reading reading = Reading.of(home.place(), Clock.systemUTC())) {
      Supplements supplements =
          new Supplements(
              reading.evidence(),
              reading.evidence().edition(Version.NUMBER),
              reading::screeningFlow);
      SupplementWriter.Written written =
          Work.within(LimitOption.of(limits)).join(() -> write(supplements));
      System.err.println(
          written.analyses()
              + (written.analyses() == 1 ? " analysis" : " analyses")
              + " on "
              + written.studies()
              + (written.studies() == 1 ? " study" : " studies")
              + " written to "
              + target
              + ". Computed from the data in it alone, "
              + written.numbers()
              + " numbers came out as the evidence base tells them.");
      return Exit.DONE;
    } catch (WrongInputException wrong) {
      wrong.problems().forEach(problem -> System.err.println(problem.line()));
    } catch (WorkStoppedException stopped) {
      System.err.println(stopped.problem().line());
    }
    System.err.println("Nothing was written.");
    return Exit.WRONG;
  }

  private SupplementWriter.Written write(Supplements supplements) {
    try {
      return supplements.write(target, wish(supplements));
    } catch (IOException unwritten) {
      throw new UncheckedIOException(unwritten);
    }
  }

  private SupplementWriter.Wish wish(Supplements supplements) {
    if (asked.all) {
      return supplements.everything();
    }
    return asked
        .question
        .map(address -> of(supplements, address))
        .orElseGet(() -> supplements.plans(asked.plans));
  }

  private static SupplementWriter.Wish of(Supplements supplements, String address) {
    int mark = address.indexOf('?');
    String path = mark < 0 ? "" : address.substring(0, mark);
    return supplements.of(
        path.isEmpty() ? PagePaths.POOLED : path, new Address(parameters(address, mark + 1)));
  }

  private static Map<String, List<String>> parameters(String address, int from) {
    Map<String, List<String>> parameters = new LinkedHashMap<>();
    for (String one : address.substring(from).split("&")) {
      String[] parts = one.split("=", 2);
      parameters
          .computeIfAbsent(decoded(parts[0]), name -> new ArrayList<>())
          .add(parts.length == 2 ? decoded(parts[1]) : "");
    }
    return parameters;
  }

  private static String decoded(String text) {
    return URLDecoder.decode(text, StandardCharsets.UTF_8);
  }
}
