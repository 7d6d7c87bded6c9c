package gapwise.analysis.bayesian;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.effect.ArmMean;
import gapwise.effect.StudyData;
import gapwise.synthesis.bayes.TauPrior;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A prior of tau that a plan asks for. */
sealed interface AskedPrior {
  /** As the plan has it, for the result. */
  JsonNode told();

  /** Whether its scale stands in the unit of the effects. */
  boolean hasScale();

  /**
   * The prior for some studies.
   *
   * @return empty if they report nothing its scale could be taken from
   */
  Optional<TauPrior> of(List<? extends StudyData> studies);

  /** Its scale in the unit of the effects where the plan does not say that; empty where it does. */
  default OptionalDouble scale(List<? extends StudyData> studies) {
    return OptionalDouble.empty();
  }

  static AskedPrior of(JsonNode tau) {
    return tau.has(InDeviations.WORD)
        ? new InDeviations(tau.get(InDeviations.WORD).asDouble(), tau)
        : new Known(PriorReader.tau(tau), tau);
  }

  /**
   * One whose scale the plan gives as a number.
   *
   * @param prior on the analysis scale
   */
  record Known(TauPrior prior, JsonNode told) implements AskedPrior {
    @Override
    public boolean hasScale() {
      return !(prior instanceof TauPrior.Flat);
    }

    @Override
    public Optional<TauPrior> of(List<? extends StudyData> studies) {
      return Optional.of(prior);
    }
  }

  /**
   * Half-normal with a scale in standard deviations of patients about the mean of their group,
   * pooled over the studies it is for: the same whatever the unit.
   *
   * @param deviations above 0
   */
  record InDeviations(double deviations, JsonNode told) implements AskedPrior {
    static final String WORD = "halfNormalOfStandardDeviation";

    @Override
    public boolean hasScale() {
      return false;
    }

    @Override
    public OptionalDouble scale(List<? extends StudyData> studies) {
      List<ArmMean> groups = studies.stream().flatMap(one -> one.means().stream()).toList();
      double scale = deviations * ArmMean.pooledDeviation(groups).orElse(0);
      return scale > 0 && Double.isFinite(scale)
          ? OptionalDouble.of(scale)
          : OptionalDouble.empty();
    }

    @Override
    public Optional<TauPrior> of(List<? extends StudyData> studies) {
      OptionalDouble scale = scale(studies);
      return scale.isEmpty()
          ? Optional.empty()
          : Optional.of(new TauPrior.HalfNormal(scale.getAsDouble()));
    }
  }
}
