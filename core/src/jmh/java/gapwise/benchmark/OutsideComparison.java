package gapwise.benchmark;

import gapwise.synthesis.likelihood.BinomialNormal;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.LikelihoodFit;
import gapwise.synthesis.likelihood.MarginalLikelihood;
import gapwise.effect.ArmCounts;
import gapwise.synthesis.bayes.CentrePrior;
import gapwise.synthesis.bayes.CountsPosterior;
import gapwise.synthesis.bayes.TauPrior;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.GroupMeans;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.heterogeneity.TauSquaredEstimator;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.pooling.WeightedMean;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;

/**
 * The same sums on the same data here, in R and in Python, all warm and timed inside their process.
 * Needs {@code Rscript} with lme4 and {@code python3} with SciPy (Debian: r-base-core, r-cran-lme4,
 * python3-scipy).
 */
final class OutsideComparison {
  private static final int[] STUDIES = {10, 100, 1000};

  private OutsideComparison() {}

  /** What was found and how long it took at the median of batches, in seconds. */
  private record Timed(double estimate, double seconds) {}

  static List<String> table() throws IOException, InterruptedException {
    List<String> lines = new ArrayList<>();
    lines.add(
        "| same sums | studies | here, microseconds | there, microseconds | ratio | estimates differ by"
            + " |");
    lines.add("| --- | --- | --- | --- | --- | --- |");
    for (int studies : STUDIES) {
      InventedSeries series = InventedSeries.of(studies);
      EffectSample logits = series.logits();
      for (String line : outside(series, logits)) {
        String[] cells = line.split(",");
        Timed here = timed(here(cells[0], series, logits));
        double seconds = Double.parseDouble(cells[2]);
        lines.add(
            String.format(
                Locale.ROOT,
                "| %s | %d | %.1f | %.0f | %.0f | %.1e |",
                cells[0],
                studies,
                1e6 * here.seconds(),
                1e6 * seconds,
                seconds / here.seconds(),
                Math.abs(Double.parseDouble(cells[1]) - here.estimate())));
      }
    }
    return lines;
  }

  private static Supplier<Double> here(
      String what, InventedSeries series, EffectSample logits) {
    if (what.startsWith("posterior")) {
      return () -> posterior(series);
    }
    return what.startsWith("exact") ? () -> exact(series) : () -> restricted(logits);
  }

  private static double posterior(InventedSeries series) {
    List<ArmCounts> arms = new ArrayList<>();
    for (int i = 0; i < series.events().length; i++) {
      arms.add(new ArmCounts(series.events()[i], series.totals()[i]));
    }
    return CountsPosterior.of(
            MarginalLikelihood.of(ExactLikelihood.Model.PROPORTION, arms),
            new CentrePrior.UniformShare(),
            new TauPrior.HalfNormal(1))
        .orElseThrow()
        .centre()
        .mean()
        .orElseThrow();
  }

  private static double exact(InventedSeries series) {
    return ((LikelihoodFit.Estimate) BinomialNormal.fit(series.events(), series.totals(), 25))
        .estimate();
  }

  private static double restricted(EffectSample logits) {
    TauSquaredEstimator estimator =
        TauSquaredEstimators.named("restricted-maximum-likelihood").orElseThrow();
    TauSquared found = estimator.estimate(logits, GroupMeans.one(logits));
    return WeightedMean.of(logits, ((TauSquared.Estimate) found).value()).estimate();
  }

  private static Timed timed(Supplier<Double> run) {
    double estimate = 0;
    double[] seconds = new double[9];
    for (int batch = 0; batch < seconds.length; batch++) {
      long start = System.nanoTime();
      int runs = 0;
      while (System.nanoTime() - start < 200_000_000L) {
        estimate = run.get();
        runs++;
      }
      seconds[batch] = (System.nanoTime() - start) / 1e9 / runs;
    }
    // the first batches warm up
    double[] warm = Arrays.copyOfRange(seconds, 4, seconds.length);
    Arrays.sort(warm);
    return new Timed(estimate, warm[warm.length / 2]);
  }

  private static List<String> outside(InventedSeries series, EffectSample logits)
      throws IOException, InterruptedException {
    Path data = Files.createTempFile("series", ".csv");
    try {
      List<String> rows = new ArrayList<>(List.of("events,total,effect,variance"));
      for (int i = 0; i < logits.size(); i++) {
        rows.add(
            series.events()[i]
                + ","
                + series.totals()[i]
                + ","
                + logits.effect(i)
                + ","
                + logits.variance(i));
      }
      Files.write(data, rows);
      List<String> lines =
          new ArrayList<>(run("lme4", "Rscript", "src/jmh/compare/compare.R", data.toString()));
      lines.addAll(run("SciPy", "python3", "src/jmh/compare/posterior.py", data.toString()));
      return lines;
    } finally {
      Files.delete(data);
    }
  }

  private static List<String> run(String needs, String... command)
      throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (process.waitFor() != 0) {
      throw new IOException(command[0] + " failed; it needs " + needs + ". It wrote: " + output);
    }
    return output.lines().toList();
  }
}
