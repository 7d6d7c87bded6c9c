package gapwise.synthesis.likelihood;

import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import gapwise.synthesis.regression.DesignMatrix;
import gapwise.synthesis.regression.Obstacles;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Counts explained by moderators by their own likelihood: the true value of study i is x_i'b + u_i
 * on the logit or log scale, u_i normal about 0 with standard deviation tau, and its counts are
 * binomial, Poisson or hypergeometric given that; b and tau by maximum likelihood (Stijnen, Hamza
 * and Ozdemir, Stat Med 2010;29:3046, section 5, from memory, for moderators in these models).
 * Studies that say nothing add nothing.
 */
public sealed interface CountRegression permits CountRegression.NotFitted, CountRegressionFit {
  /** So many points of a quadrature and more are taken to ask for sums that stand still. */
  int FEWEST_FOR_LATTICE = 25;

  /**
   * There is no fit.
   *
   * @param why it has none
   */
  record NotFitted(Problem why) implements CountRegression {}

  /**
   * Fits.
   *
   * @param model one without an intercept a study
   * @param studies counts of the kind the model has
   * @param design a row for each of them
   * @param points of the adaptive quadrature, 1 (Laplace) to 200; from 25 on lattices that are
   *     refined until they stand still take their place
   * @param limits level, reference and prediction
   */
  static CountRegression of(
      ExactLikelihood.Model model,
      List<? extends StudyData> studies,
      DesignMatrix design,
      int points,
      LikelihoodLimits limits) {
    List<StudyData> told = new ArrayList<>();
    List<Integer> places = new ArrayList<>();
    for (int i = 0; i < studies.size(); i++) {
      if (ExactLikelihood.tells(studies.get(i))) {
        told.add(studies.get(i));
        places.add(i);
      }
    }
    DesignMatrix left = design.at(places);
    Optional<Problem> not = Obstacles.of(left);
    if (not.isPresent()) {
      return new NotFitted(not.get());
    }
    StudyLikelihoods likelihoods = StudyLikelihoods.of(model, told);
    Optional<LikelihoodFit.Reason> one = LikelihoodSearch.atOneLimit(likelihoods);
    if (one.isPresent()) {
      return new NotFitted(WhyNoTop.of(model, one.get(), told));
    }
    LinearMeans.Turned turned = LinearMeans.Turned.of(left);
    if (Separation.of(likelihoods, turned.means())) {
      return new NotFitted(new Problem("", "estimate-at-limit", SEPARATED));
    }
    RegressionSearch search = new RegressionSearch(likelihoods, points);
    RegressionSearch.Top top = search.top(turned.means());
    double far = FarLikelihood.of(likelihoods, turned.means());
    if (!(top.value() > far)) {
      return new NotFitted(new Problem("", "estimate-at-limit", SPREAD));
    }
    if (!top.place().isHill() || !Double.isFinite(top.value())) {
      return new NotFitted(new Problem("", "did-not-converge", OUT_OF_RANGE));
    }
    return new CountRegressionFit(
        new CountRegressionFit.Counts(model, List.copyOf(studies), design),
        left,
        turned,
        search,
        top,
        limits,
        far == Double.NEGATIVE_INFINITY);
  }

  /** Said where the likelihood rises for ever along the moderators. */
  String SEPARATED =
      "from some value of the moderators on, or in one of their categories, every study has no event"
          + " or only events, so the likelihood rises as a coefficient grows and has no highest"
          + " point; put categories together or ask of fewer moderators; the model 'random-effects'"
          + " adds half events and has an answer";

  /** Said where it rises for ever with the spread. */
  String SPREAD =
      "every study lies at one limit or the other, so the likelihood rises as the spread between"
          + " studies grows and has no highest point; nothing is fitted";

  /** Said where numbers end. */
  String OUT_OF_RANGE =
      "the likelihood could not be worked out within the range of numbers; check the units of counts"
          + " and moderators";
}
