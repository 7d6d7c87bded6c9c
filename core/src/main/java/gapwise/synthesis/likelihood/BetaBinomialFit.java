package gapwise.synthesis.likelihood;

/** The top of the likelihood of shares with a beta distribution, or why there is none. */
public sealed interface BetaBinomialFit {

  /**
   * The top.
   *
   * @param logit of the mean share
   * @param standardError of that logit, from the full information on it and the correlation; at a
   *     correlation of 0 from that on the logit alone
   * @param intraclassCorrelation of the outcomes of two patients of one study, from 0 to below 1
   * @param logLikelihood with all constants
   * @param converged whether the search settled
   */
  record Estimate(
      double logit,
      double standardError,
      double intraclassCorrelation,
      double logLikelihood,
      boolean converged)
      implements BetaBinomialFit {
    public Estimate {
      boolean correlation = intraclassCorrelation >= 0 && intraclassCorrelation < 1;
      if (!(Double.isFinite(logit) && standardError > 0 && correlation)) {
        throw new IllegalArgumentException(
            "no fit: " + logit + " +- " + standardError + ", rho " + intraclassCorrelation);
      }
    }
  }

  /** There is no top; a spread is here the correlation, which rises to 1. */
  record NoMaximum(LikelihoodFit.Reason reason) implements BetaBinomialFit {}
}
