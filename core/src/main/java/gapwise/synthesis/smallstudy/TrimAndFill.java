package gapwise.synthesis.smallstudy;

import gapwise.budget.Work;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.pooling.InverseVariance;
import gapwise.synthesis.pooling.MeanIntervals;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PoolingSettings;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Trim and fill: Duval and Tweedie, Biometrics 2000;56:455 and J Am Stat Assoc 2000;95:89. The
 * studies farthest out on one side are taken away until the rest lies evenly, the mean of the rest
 * is the middle, and those taken away are mirrored about it.
 *
 * <p>Places left open by the papers are settled thus: mean and tau squared by the model named at
 * each step and at the end; the estimate of the number rounded half up and not below 0; ties of
 * ranks in the order of the effects; steps until the number stays the same. Should the numbers go
 * round in a circle, the search ends and says so.
 *
 * @param estimator of the number of studies
 * @param side on which studies are missing and imagined
 * @param random whether random effects are used, else a common effect
 */
public record TrimAndFill(Estimator estimator, Side side, boolean random)
    implements SmallStudyTest {
  /** How many studies are missing, from ranks of distances from the mean. */
  public enum Estimator {
    /** (4T - k(k+1))/(2k-1), T the sum of the ranks on the full side. */
    L0,
    /** The run of greatest ranks on the full side, less 1. */
    R0
  }

  /** A side of the funnel. */
  public enum Side {
    LEFT,
    RIGHT;

    /** The word in a plan. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  public TrimAndFill {
    Objects.requireNonNull(estimator, "estimator");
    Objects.requireNonNull(side, "side");
  }

  @Override
  public String name() {
    return "trim-and-fill";
  }

  @Override
  public AsymmetryFinding find(SmallStudyData data) {
    Optional<Refusal> unusable = data.unusable();
    if (unusable.isPresent()) {
      return new AsymmetryFinding.Refused(unusable.get());
    }
    PoolingSettings settings = settings(data.settings());
    EffectSample sample = data.effects();
    Pooled all = InverseVariance.pool(sample, settings);
    if (all.mean().isEmpty()) {
      return refused(all);
    }
    // Places from the side on which studies are missing to the full side.
    double away = side == Side.LEFT ? 1 : -1;
    List<Integer> order =
        IntStream.range(0, sample.size())
            .boxed()
            .sorted(Comparator.comparingDouble(i -> away * sample.effect(i)))
            .toList();
    int trimmed = 0;
    boolean settled = false;
    double middle = all.mean().get().estimate();
    for (int step = 0; step <= sample.size() && !settled; step++) {
      Work.check();
      Pooled rest =
          InverseVariance.pool(sample.at(order.subList(0, order.size() - trimmed)), settings);
      if (rest.mean().isEmpty()) {
        return refused(rest);
      }
      middle = rest.mean().get().estimate();
      int next = missing(sample, order, middle, away);
      settled = next == trimmed;
      trimmed = settled ? trimmed : next;
    }
    return filled(sample, order, trimmed, middle, settings, all, settled);
  }

  private static AsymmetryFinding refused(Pooled without) {
    return new AsymmetryFinding.Refused(new Refusal.NotComputable(without.warnings().get(0)));
  }

  private PoolingSettings settings(PoolingSettings plan) {
    if (!random) {
      return plan.withCommonEffect();
    }
    return plan.estimator().isPresent()
        ? plan
        : new PoolingSettings(
            Optional.of(TauSquaredEstimators.all().get(0)),
            MeanIntervals.normal(),
            plan.prediction(),
            plan.tauSquaredInterval(),
            plan.level());
  }

  /** The estimated number of missing studies, so that at least one study stays. */
  private int missing(EffectSample sample, List<Integer> order, double middle, double away) {
    int k = order.size();
    List<Double> distances = order.stream().map(i -> away * (sample.effect(i) - middle)).toList();
    List<Integer> byRank =
        IntStream.range(0, k)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> Math.abs(distances.get(i))))
            .toList();
    double estimate = estimator == Estimator.L0 ? l0(distances, byRank) : r0(distances, byRank);
    return (int) Math.min(k - 1, Math.max(0, Math.floor(estimate + 0.5)));
  }

  private static double l0(List<Double> distances, List<Integer> byRank) {
    double k = distances.size();
    double sum = 0;
    for (int rank = 1; rank <= k; rank++) {
      sum += distances.get(byRank.get(rank - 1)) > 0 ? rank : 0;
    }
    return (4 * sum - k * (k + 1)) / (2 * k - 1);
  }

  private static double r0(List<Double> distances, List<Integer> byRank) {
    int run = 0;
    while (run < byRank.size() && distances.get(byRank.get(byRank.size() - 1 - run)) > 0) {
      run++;
    }
    return run - 1;
  }

  private AsymmetryFinding filled(
      EffectSample sample,
      List<Integer> order,
      int trimmed,
      double middle,
      PoolingSettings settings,
      Pooled all,
      boolean settled) {
    List<AsymmetryFinding.Imagined> imagined = new ArrayList<>();
    List<Double> effects = new ArrayList<>();
    List<Double> variances = new ArrayList<>();
    for (int i = 0; i < sample.size(); i++) {
      effects.add(sample.effect(i));
      variances.add(sample.variance(i));
    }
    for (int j = 0; j < trimmed; j++) {
      int place = order.get(order.size() - 1 - j);
      double mirrored = middle - (sample.effect(place) - middle);
      imagined.add(new AsymmetryFinding.Imagined(place, mirrored, sample.variance(place)));
      effects.add(mirrored);
      variances.add(sample.variance(place));
    }
    Pooled pooled = InverseVariance.pool(EffectSample.of(effects, variances), settings);
    if (pooled.mean().isEmpty()) {
      return refused(pooled);
    }
    return new AsymmetryFinding.Filled(
        this,
        imagined,
        pooled.mean().get(),
        pooled.heterogeneity().tauSquared(),
        settled,
        AsymmetryWords.filled(
            trimmed, side.word(), all.mean().get().estimate(), pooled.mean().get().estimate()));
  }
}
