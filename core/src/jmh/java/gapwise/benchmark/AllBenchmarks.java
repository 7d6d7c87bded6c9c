package gapwise.benchmark;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.Options;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.VerboseMode;

/** Runs every benchmark, then the comparison with R, and prints the tables of the page. */
public final class AllBenchmarks {
  private AllBenchmarks() {}

  /** Takes no arguments. */
  public static void main(String[] arguments)
      throws RunnerException, IOException, InterruptedException {
    Options options =
        new OptionsBuilder()
            .include("gapwise\\.benchmark\\..*")
            .verbosity(VerboseMode.SILENT)
            .build();
    List<String> lines = new ArrayList<>();
    lines.add("| benchmark | studies | microseconds | error (99.9 %) |");
    lines.add("| --- | --- | --- | --- |");
    Collection<RunResult> results = new Runner(options).run();
    for (RunResult result : results) {
      String studies = result.getParams().getParam("studies");
      lines.add(
          String.format(
              Locale.ROOT,
              "| %s | %s | %.1f | %.1f |",
              result.getPrimaryResult().getLabel(),
              studies == null ? "60" : studies,
              result.getPrimaryResult().getScore(),
              result.getPrimaryResult().getScoreError()));
    }
    lines.add("");
    lines.addAll(OutsideComparison.table());
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    lines.forEach(out::println);
  }
}
