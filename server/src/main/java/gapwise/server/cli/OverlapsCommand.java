package gapwise.server.cli;

import gapwise.cohort.OverlapSearch;
import gapwise.cohort.Proposal;
import gapwise.server.home.Records;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Lists studies that may be one paper, or tell of the same patients. */
@Command(
    name = "overlaps",
    description = "List studies that may be one paper or tell of the same patients, with reasons.",
    mixinStandardHelpOptions = true)
public final class OverlapsCommand implements Callable<Integer> {
  @Option(names = "--csv", description = "Print the pairs as CSV: a, b, verdict.")
  private boolean csv;

  @Mixin private ExistingHomeOption home;

  @Override
  public Integer call() {
    OverlapSearch.Overlaps found;
    try (Records records = home.records()) {
      found = records.overlaps().left();
    }
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    if (csv) {
      out.println("a,b,verdict");
    }
    for (Proposal pair : found.proposals()) {
      if (csv) {
        out.println(pair.first() + "," + pair.second() + "," + pair.verdict().word());
      } else {
        tell(pair, out);
      }
    }
    int pairs = found.proposals().size();
    System.err.println(
        pairs == 0
            ? "No two studies look like one paper or like the same patients."
            : pairs
                + (pairs == 1 ? " pair" : " pairs")
                + " may be one paper or tell of the same patients.");
    if (found.tooCommon() > 0) {
      System.err.println(
          "Some names stand in so many studies that no pair was compared by them alone: "
              + found.tooCommon()
              + ".");
    }
    return Exit.DONE;
  }

  private static void tell(Proposal pair, PrintStream out) {
    out.println(pair.first() + " and " + pair.second() + ": " + pair.verdict().word());
    pair.signs()
        .forEach(
            sign ->
                out.println(
                    switch (sign.bearing()) {
                          case AGREES -> "  for      ";
                          case SPEAKS_AGAINST -> "  against  ";
                          case UNKNOWN -> "  unknown  ";
                        }
                        + sign.sentence()));
  }
}
