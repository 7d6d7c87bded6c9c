package gapwise.synthesis.network;

import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.network.NetworkMeans.NetworkFit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * A network of studies put together by generalised least squares: the contrasts of a study keep
 * their covariance, random effects add the variance between studies to each contrast and half of it
 * to each pair of contrasts of one study (Lu et al., Res Synth Methods 2011;2:43; Jackson, White
 * and Riley, Biom J 2013;55:231). One variance holds for the whole network. The door of this room.
 */
public final class Network {
  private final NetworkFrame frame;
  private final NetworkSettings settings;
  private final NetworkHeterogeneity heterogeneity;
  private final NetworkFit fit;
  private final Splitting splitting;
  private final Optional<Contributions> contributions;
  private final Designs designs;

  private Network(
      NetworkFrame frame,
      NetworkSettings settings,
      NetworkHeterogeneity heterogeneity,
      Designs designs) {
    this.frame = frame;
    this.settings = settings;
    this.heterogeneity = heterogeneity;
    this.designs = designs;
    double used = tauSquaredUsed();
    this.fit = frame.fitAt(used);
    this.splitting = new Splitting(frame, fit, used);
    this.contributions = Contributions.of(frame, fit, used);
  }

  /** A network, or why its studies cannot be put together. */
  public sealed interface Fitted {
    /** It can. */
    record Done(Network network) implements Fitted {}

    /** It cannot. */
    record Not(Problem why) implements Fitted {}
  }

  /**
   * Fits a network; never throws for finite effects and covariances.
   *
   * @param studies at least one
   * @param reference the treatment told first, if it is in a study
   */
  public static Fitted of(List<NetworkStudy> studies, String reference, NetworkSettings settings) {
    if (studies.stream().anyMatch(Network::hasZeroVariance)) {
      return not(
          "zero-variance",
          "a comparison's estimated variance is 0, so it would take all the weight and nothing is"
              + " put together; odds ratios, or counts with something added, can use such studies");
    }
    TreatmentIndex index = TreatmentIndex.of(studies, reference);
    Optional<NetworkFrame> frame = NetworkFrame.of(studies, index);
    if (frame.isEmpty() || !frame.get().sample().isWithinArithmetic()) {
      return outOfRange();
    }
    Optional<Designs> designs = Designs.of(frame.get());
    if (designs.isEmpty() || !frame.get().fitAt(0).isDetermined()) {
      return outOfRange();
    }
    return new Fitted.Done(
        new Network(
            frame.get(),
            settings,
            NetworkHeterogeneity.of(frame.get().sample(), frame.get().model(), settings),
            designs.get()));
  }

  private static boolean hasZeroVariance(NetworkStudy study) {
    for (int i = 0; i < study.treatments().size(); i++) {
      for (int j = 0; j < i; j++) {
        if (!(study.variance(i, j) >= Double.MIN_NORMAL)) {
          return true;
        }
      }
    }
    return false;
  }

  private static Fitted outOfRange() {
    return not(
        "number-out-of-range",
        "effects and their variances differ by more powers of ten than can be reckoned with, so"
            + " nothing is put together; check the units of the data");
  }

  private static Fitted not(String code, String message) {
    return new Fitted.Not(new Problem("", code, message));
  }

  private double tauSquaredUsed() {
    return heterogeneity.tauSquared().map(TauSquared.Estimate::value).orElse(0.0);
  }

  /** Treatments, the reference first, then by alphabet. */
  public List<String> treatments() {
    return frame.index().names();
  }

  /** The treatments of each connected piece, in the order of treatments. */
  public List<List<String>> pieces() {
    List<List<String>> pieces = new ArrayList<>();
    for (int i = 0; i < frame.forest().pieces(); i++) {
      pieces.add(new ArrayList<>());
    }
    for (int t = 0; t < frame.index().size(); t++) {
      pieces.get(frame.forest().piece(t)).add(treatments().get(t));
    }
    return pieces;
  }

  /** One treatment less another, by places from 0; empty if no chain of studies joins them. */
  public Optional<Comparison> comparison(int one, int other) {
    if (frame.forest().piece(one) != frame.forest().piece(other)) {
      return Optional.empty();
    }
    return Optional.of(compared(one, other));
  }

  private Comparison compared(int one, int other) {
    SparseRow contrast = frame.contrast(one, other);
    return new Comparison(fit.estimate(contrast), Math.sqrt(fit.variance(contrast)));
  }

  /**
   * Direct and indirect evidence; empty unless both are there and {@link Splitting} can part them.
   */
  public Optional<Split> split(int one, int other) {
    return splitting.of(one, other);
  }

  /** How much direct comparisons contribute; empty where {@link Contributions} cannot tell. */
  public Optional<List<Contribution>> contributions(int one, int other) {
    return contributions.map(all -> all.of(one, other));
  }

  /** Whether studies are enough to say where differences would lie in a further one. */
  public boolean tellsFurtherStudies() {
    return heterogeneity.tauSquared().isPresent() && heterogeneity.q().degreesOfFreedom() > 1;
  }

  /**
   * Where differences would lie in a further study; empty without a variance between studies or
   * degrees of freedom, or where it takes too long.
   */
  public Optional<NetworkPredictions> predictions() {
    if (!tellsFurtherStudies()) {
      return Optional.empty();
    }
    return settings.spread() == NetworkPredictions.Spread.UNKNOWN
        ? NetworkPredictions.unknown(frame, tauSquaredUsed(), settings.level())
        : Optional.of(NetworkPredictions.estimated(frame, tauSquaredUsed(), settings.level()));
  }

  /** Differences between studies. */
  public NetworkHeterogeneity heterogeneity() {
    return heterogeneity;
  }

  /** Differences within designs. */
  public ChiSquaredTest qHeterogeneity() {
    return designs.within();
  }

  /** Differences between designs, under a common effect. */
  public ChiSquaredTest qInconsistency() {
    return designs.between(frame.fitAt(0), 0);
  }

  /** Each design of two studies or more. */
  public List<DesignTest> designs() {
    return designs.listed();
  }

  /** The test between designs that allows for differences between studies; random effects only. */
  public Optional<DesignByTreatment> designByTreatment() {
    return settings
        .estimator()
        .flatMap(estimator -> DesignByTreatment.of(frame, designs, estimator));
  }

  /** Log likelihood of the contrasts at the variance between studies, with all constants. */
  public double logLikelihood(boolean restricted) {
    return frame.logLikelihood(tauSquaredUsed(), restricted);
  }

  /** Ranks of all treatments; empty unless two or more are in one piece. */
  public Optional<List<Ranked>> ranking(boolean higherIsBetter, RankDraws draws) {
    return frame.forest().pieces() == 1 && treatments().size() > 1
        ? Optional.of(
            new Ranking(treatments(), joint(), higherIsBetter).all(draws, settings.level()))
        : Optional.empty();
  }

  private JointEffects joint() {
    List<SparseRow> againstFirst =
        IntStream.range(0, treatments().size()).mapToObj(t -> frame.contrast(t, 0)).toList();
    return new JointEffects() {
      @Override
      public int parameters() {
        return frame.model().parameters();
      }

      @Override
      public Comparison comparison(int one, int other) {
        return compared(one, other);
      }

      @Override
      public double[] drawn(double[] standard) {
        double[] parameters = fit.drawn(standard);
        return againstFirst.stream().mapToDouble(row -> row.at(parameters)).toArray();
      }
    };
  }
}
