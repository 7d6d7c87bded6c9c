package gapwise.synthesis.network.exact;

import gapwise.problem.Problem;
import gapwise.synthesis.network.Comparison;
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
  private final Pieces pieces;
  private final boolean spread;
  private final ExactFit fit;

  private ExactNetwork(Pieces pieces, boolean spread, ExactFit fit) {
    this.pieces = pieces;
    this.spread = spread;
    this.fit = fit;
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
    if (spread && studies.stream().allMatch(ExactNetwork::isAtLimit)) {
      return not("estimate-at-limit", AT_LIMITS);
    }
    CountLikelihood likelihood =
        new CountLikelihood(
            studies.stream().map(StudyMarginal::of).toList(),
            studies.stream().map(pieces::parameters).toList(),
            pieces.parameters());
    return ExactFit.of(likelihood, spread)
        .<Fitted>map(fit -> new Fitted.Done(new ExactNetwork(pieces, spread, fit)))
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

  /** Whether no events could move back and forth between any two arms. */
  private static boolean isAtLimit(CountedStudy study) {
    for (int i = 0; i < study.arms().size(); i++) {
      for (int j = 0; j < i; j++) {
        if (study.canMove(i, j) && study.canMove(j, i)) {
          return false;
        }
      }
    }
    return true;
  }

  private static String separated(List<String> falling) {
    return "in every study that compares "
        + String.join(", ", falling)
        + " with a further treatment, either it had no event there or every patient of the further"
        + " treatment had one, so the likelihood rises for ever as its odds fall and has no highest"
        + " point; put like treatments together or leave those out that had no event; without"
        + " 'likelihood' half events are added and there is an answer";
  }

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
  public Optional<Comparison> comparison(int one, int other) {
    if (!pieces.together(one, other)) {
      return Optional.empty();
    }
    double[] sum = pieces.contrast(one, other);
    return Optional.of(new Comparison(fit.estimate(sum), Math.sqrt(fit.variance(sum))));
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
}
