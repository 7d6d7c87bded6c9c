package gapwise.synthesis.multiverse;

import gapwise.budget.Work;
import gapwise.effect.BackTransform;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.regression.DesignMatrix;
import gapwise.synthesis.regression.RegressionSettings;
import gapwise.synthesis.regression.RobustVariance;
import gapwise.synthesis.regression.SumOfTerms;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * Effects explained by moderators, of which one sum of coefficients is told. The effects of a
 * subset and their design are taken once for all ways.
 *
 * @param scale its word
 * @param fitted one way of fitting each
 * @param rows the rows at some places, with what explains them
 */
public record RegressionApproach(
    String scale, List<Way> fitted, Function<List<Integer>, Explained> rows) implements Approach {
  public RegressionApproach {
    fitted = List.copyOf(fitted);
  }

  /**
   * A way of fitting.
   *
   * @param settings the levels of all choices but the rows
   * @param how estimator, test and level
   * @param robust a variance that allows for clusters in place of the test; empty for none
   */
  public record Way(
      Settings settings, RegressionSettings how, Optional<RobustVariance.Correction> robust) {}

  /**
   * Effects of some rows with what explains them.
   *
   * @param sample those that enter
   * @param design a row for each
   * @param sum the factor of each term
   * @param clusters the cluster of each, empty text where a row names none
   * @param back the way to what people read of the sum
   * @param ifEmpty the code that says why no effect is left, should none be
   */
  public record Explained(
      EffectSample sample,
      DesignMatrix design,
      List<Double> sum,
      List<String> clusters,
      BackTransform back,
      String ifEmpty) {
    public Explained {
      sum = List.copyOf(sum);
      clusters = List.copyOf(clusters);
    }

    private double[] factors() {
      return sum.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Those that name a cluster. */
    private Explained clustered() {
      List<Integer> kept =
          IntStream.range(0, clusters.size())
              .filter(i -> !clusters.get(i).isEmpty())
              .boxed()
              .toList();
      return new Explained(
          sample.at(kept),
          design.at(kept),
          sum,
          kept.stream().map(clusters::get).toList(),
          back,
          ifEmpty);
    }
  }

  @Override
  public List<Settings> ways() {
    return fitted.stream().map(Way::settings).toList();
  }

  @Override
  public List<AnalysisFinding> findings(Subset subset) {
    Explained explained = rows.apply(subset.rows());
    List<AnalysisFinding> findings = new ArrayList<>(fitted.size());
    for (Way way : fitted) {
      Work.check();
      findings.add(
          explained.sample().size() == 0
              ? new AnalysisFinding.NotEstimated(explained.ifEmpty())
              : finding(explained, way));
    }
    return findings;
  }

  private static AnalysisFinding finding(Explained all, Way way) {
    Explained some = way.robust().isPresent() ? all.clustered() : all;
    SumOfTerms told =
        way.robust().isPresent()
            ? SumOfTerms.robust(
                some.sample(),
                some.design(),
                way.how(),
                some.factors(),
                some.clusters(),
                way.robust().get())
            : SumOfTerms.of(some.sample(), some.design(), way.how(), some.factors());
    return told instanceof SumOfTerms.Told value
        ? AnalysisFinding.of(value.value(), some.back(), some.sample().size())
        : new AnalysisFinding.NotEstimated(((SumOfTerms.NotTold) told).code());
  }
}
