package gapwise.synthesis.likelihood;

/** The top of the likelihood of a mean and a spread between studies, or why there is none. */
public sealed interface LikelihoodFit {

  /**
   * The top.
   *
   * @param estimate the mean on the logit or log scale
   * @param standardError of the mean from the full information on mean and spread (and intercepts);
   *     at a tau of 0 from that on the mean alone, since the two are then without covariance
   * @param tau standard deviation between studies, at least 0
   * @param logLikelihood with all constants
   * @param converged whether the search settled
   * @param points whether those asked for were enough
   */
  record Estimate(
      double estimate,
      double standardError,
      double tau,
      double logLikelihood,
      boolean converged,
      Points points)
      implements LikelihoodFit {
    public Estimate {
      if (!(Double.isFinite(estimate) && standardError > 0 && tau >= 0)) {
        throw new IllegalArgumentException(
            "no fit: " + estimate + " +- " + standardError + ", tau " + tau);
      }
    }

    /** The same with the word that its points are too coarse. */
    Estimate tooCoarse() {
      return new Estimate(
          estimate, standardError, tau, logLikelihood, converged, Points.TOO_COARSE);
    }
  }

  /** Of the quadrature, as they turned out. */
  enum Points {
    /** The fit is theirs. */
    ENOUGH,
    /** They were too coarse, so that lattices took their place. */
    REFINED,
    /** They are too coarse, and the fit is theirs, because few were asked for. */
    TOO_COARSE
  }

  /** Why the likelihood has no top. */
  enum Reason {
    /** No study says anything. */
    NO_INFORMATION,
    /** It rises as the mean goes to minus infinity: no events, or none in the first group. */
    MEAN_FALLS,
    /** It rises as the mean goes to infinity: only events, or none in the second group. */
    MEAN_RISES,
    /** It rises as the spread grows: every study lies at one limit or the other. */
    SPREAD_RISES,
    /** Arithmetic does not reach it. */
    OUT_OF_RANGE
  }

  /** There is no top. */
  record NoMaximum(Reason reason) implements LikelihoodFit {}
}
