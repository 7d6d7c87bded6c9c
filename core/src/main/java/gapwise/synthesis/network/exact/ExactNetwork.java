package gapwise.synthesis.network.exact;

import gapwise.effect.Interval;
import gapwise.numeric.ReferenceDistribution;
import gapwise.problem.Problem;
import gapwise.synthesis.network.Comparison;
import gapwise.synthesis.network.DesignByTreatment;
import gapwise.synthesis.network.NetworkPredictions;
import gapwise.synthesis.network.RankDraws;
import gapwise.synthesis.network.Ranked;
import gapwise.synthesis.network.Ranking;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A network of counts put together by their exact likelihood: events of the arms of a study given
 * their total (the multivariate non-central hypergeometric distribution), true log odds ratios
 * normal about those of the network with one variance for all comparisons and half of it between
 * two of one study, everything by maximum likelihood (Stijnen, Hamza and Ozdemir, Stat Med
 * 2010;29:3046, for two arms). Nothing is added to empty cells. The door of this room.
 */
public final class ExactNetwork {
  /**
   * Limits by profile likelihood take some dozens of evaluations for each pair; with more points
   * than this over all pairs, some ten seconds of work, those of the information take their place.
   */
  private static final int MOST_POINTS = 60_000;

  private final List<CountedStudy> studies;
  private final Pieces pieces;
  private final boolean spread;
  private final ExactFit fit;
  private final ExactSettings settings;
  private final Apart apart;

  private ExactNetwork(
      List<CountedStudy> studies,
      Pieces pieces,
      boolean spread,
      ExactFit fit,
      ExactSettings settings) {
    this.studies = List.copyOf(studies);
    this.pieces = pieces;
    this.spread = spread;
    this.fit = fit;
    this.settings = settings;
    this.apart = new Apart(studies, pieces, fit, spread);
  }

  /** A network, or why its studies cannot be put together. */
  public sealed interface Fitted {
    /** It can. */
    record Done(ExactNetwork network) implements Fitted {}

    /** It cannot. */
    record Not(Problem why) implements Fitted {}
  }

  /**
   * Fits a network.
   *
   * @param studies at least one, each of which tells something
   * @param reference the treatment told first, if it is in a study
   */
  public static Fitted of(List<CountedStudy> studies, String reference, ExactSettings settings) {
    Optional<Problem> obstacle = arms(studies);
    if (obstacle.isPresent()) {
      return new Fitted.Not(obstacle.get());
    }
    Pieces pieces = Pieces.of(studies, reference);
    Optional<List<String>> falling = pieces.falling();
    if (falling.isPresent()) {
      return not("estimate-at-limit", separated(falling.get()));
    }
    int contrasts = studies.stream().mapToInt(CountedStudy::contrasts).sum();
    boolean spread = settings.random() && contrasts > pieces.parameters();
    if (spread && studies.stream().allMatch(study -> study.contrastsWithTop() == 0)) {
      return not("estimate-at-limit", AT_LIMITS);
    }
    return ExactFit.of(pieces.likelihood(studies), spread)
        .<Fitted>map(
            fit -> new Fitted.Done(new ExactNetwork(studies, pieces, spread, fit, settings)))
        .orElseGet(() -> not("did-not-converge", OUT_OF_RANGE));
  }

  private static Optional<Problem> arms(List<CountedStudy> studies) {
    return studies.stream()
        .filter(study -> study.contrasts() > StudyMarginal.MOST_CONTRASTS)
        .findFirst()
        .map(
            study ->
                new Problem(
                    "",
                    "too-many-arms",
                    study.label()
                        + " has "
                        + study.arms().size()
                        + " arms, and the exact likelihood of a network takes at most "
                        + (StudyMarginal.MOST_CONTRASTS + 1)
                        + " in one study, since its integral grows with every arm; put like arms"
                        + " together, or leave 'likelihood' out"));
  }

  private static String separated(List<String> falling) {
    return "in every study that compares "
        + String.join(", ", falling)
        + " with a further treatment, either it had no event there or every patient of the further"
        + " treatment had one, so the likelihood rises for ever as its odds fall and has no highest"
        + " point; put like treatments together or leave those out that had no event; without"
        + " 'likelihood' half events are added and there is an answer";
  }

  /** A first guess of how well tau is known where it is estimated as 0. */
  private static final double FIRST_ERROR = 0.2;

  private static final String AT_LIMITS =
      "in every study the events lie wholly at one side, so how far studies differ cannot be told"
          + " from them; nothing is fitted; with 'networkEffects' 'common' there is an answer";

  private static final String OUT_OF_RANGE =
      "the likelihood could not be worked out within the range of numbers; check the counts";

  private static Fitted not(String code, String message) {
    return new Fitted.Not(new Problem("", code, message));
  }

  /** Treatments, the reference first, then by alphabet. */
  public List<String> treatments() {
    return pieces.names();
  }

  /** The treatments of each connected piece, in the order of treatments. */
  public List<List<String>> pieces() {
    return pieces.listed();
  }

  /** One treatment less another, by places from 0; empty if no chain of studies joins them. */
  public Optional<ExactComparison> comparison(int one, int other) {
    if (!pieces.together(one, other)) {
      return Optional.empty();
    }
    double[] sum = pieces.contrast(one, other);
    Comparison effect = fit.comparison(sum);
    if (!isSmall()) {
      return Optional.of(
          new ExactComparison(
              effect.estimate(), effect.standardError(), effect.interval(settings.level()), false));
    }
    Profile profile = new Profile(fit, sum, spread);
    OptionalDouble lower = profile.limit(-1, point(), effect.standardError());
    OptionalDouble upper = profile.limit(1, point(), effect.standardError());
    Interval normal = effect.interval(settings.level());
    return Optional.of(
        new ExactComparison(
            effect.estimate(),
            effect.standardError(),
            new Interval(lower.orElse(normal.lower()), upper.orElse(normal.upper())),
            lower.isPresent() && upper.isPresent()));
  }

  private double point() {
    return ReferenceDistribution.normal().multiplier(settings.level());
  }

  /** Whether many refits are no long work. */
  private boolean isSmall() {
    long pairs = (long) treatments().size() * (treatments().size() - 1) / 2;
    return pairs * fit.likelihood().points() <= MOST_POINTS;
  }

  /**
   * Standard deviation between studies; empty for common effects, and where there are no more
   * contrasts than effects, so that nothing tells of it.
   */
  public OptionalDouble tau() {
    return spread ? OptionalDouble.of(fit.top().tau()) : OptionalDouble.empty();
  }

  /** With all constants. */
  public double logLikelihood() {
    return fit.top().value();
  }

  /** Whether the search and the integrals settled. */
  public boolean converged() {
    return fit.converged();
  }

  /** Limits for tau squared by profile likelihood; empty without it, or without an upper one. */
  public Optional<Interval> tauSquaredInterval() {
    if (!spread || !isSmall()) {
      return Optional.empty();
    }
    double[] sum = new double[pieces.parameters() + 1];
    sum[pieces.parameters()] = 1;
    Profile profile = new Profile(fit, sum, true);
    double guess = Math.max(FIRST_ERROR, Math.sqrt(fit.variance(sum)));
    boolean aboveZero = fit.top().tau() > 0 && profile.root(0) > point();
    double lower = aboveZero ? profile.limit(-1, point(), guess).orElse(0) : 0;
    OptionalDouble upper = profile.limit(1, point(), guess);
    if (upper.isPresent()) {
      // So far out integrals may ask for more points than at the top.
      upper = new Profile(fit.refinedAt(upper.getAsDouble()), sum, true).limit(1, point(), guess);
    }
    return upper.isPresent()
        ? Optional.of(new Interval(lower * lower, upper.getAsDouble() * upper.getAsDouble()))
        : Optional.empty();
  }

  /**
   * Whether studies are enough to say where differences would lie in a further one: without two
   * contrasts with a top of their own beyond the effects, the weight of a large tau has no end.
   */
  public boolean tellsFurtherStudies() {
    return spread && power() > 1;
  }

  private int power() {
    return studies.stream().mapToInt(CountedStudy::contrastsWithTop).sum() - pieces.parameters();
  }

  /** Where differences would lie in a further study; empty where it takes too long. */
  public Optional<NetworkPredictions> predictions() {
    return tellsFurtherStudies() && isSmall()
        ? Further.of(fit, pieces, power(), settings.level())
        : Optional.empty();
  }

  /** Ranks of all treatments; empty unless two or more are in one piece. */
  public Optional<List<Ranked>> ranking(boolean higherIsBetter, RankDraws draws) {
    return pieces.count() == 1 && treatments().size() > 1
        ? Optional.of(
            new Ranking(treatments(), new JointFit(pieces, fit), higherIsBetter)
                .all(draws, settings.level()))
        : Optional.empty();
  }

  /**
   * Direct and indirect evidence for a pair, by places from 0; empty unless studies of two arms
   * alone hold it and there is another way, or where it takes too long.
   */
  public Optional<ExactSplit> split(int one, int other) {
    return isSmall() && pieces.together(one, other)
        ? apart.split(treatments().get(one), treatments().get(other))
        : Optional.empty();
  }

  /** The likelihood ratio test of all design-by-treatment interactions; empty without any. */
  public Optional<DesignByTreatment> designByTreatment() {
    return apart.designs();
  }
}
