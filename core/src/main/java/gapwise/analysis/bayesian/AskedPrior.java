package gapwise.analysis.bayesian;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.synthesis.bayes.TauPrior;

/**
 * A prior of tau that a plan asks for.
 *
 * @param told as the plan has it, for the result
 */
record AskedPrior(TauPrior prior, JsonNode told) {
  static AskedPrior of(JsonNode tau) {
    return new AskedPrior(PriorReader.tau(tau), tau);
  }

  /** Whether its scale stands in the unit of the effects. */
  boolean hasScale() {
    return !(prior instanceof TauPrior.Flat);
  }
}
