package gapwise.effect;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Correlation of two measurements of the same patients as Fisher's z, the inverse hyperbolic
 * tangent of r, whose variance 1/(n - 3) does not hang on r (Fisher, Metron 1921;1:3).
 */
record Correlation() implements Measure<Correlation.OfPairs> {
  private static final String ROLE = "correlation";

  /** With three pairs or fewer z has no variance. */
  private static final int MOST_WITHOUT_VARIANCE = 3;

  /**
   * What a study reports.
   *
   * @param r from -1 to 1
   * @param pairs patients with both measurements, at least 1
   */
  record OfPairs(double r, double pairs) implements StudyData {
    @Override
    public int arms() {
      return 1;
    }

    @Override
    public OptionalDouble participants() {
      return OptionalDouble.of(pairs);
    }

    @Override
    public OptionalDouble allEvents() {
      return OptionalDouble.empty();
    }
  }

  @Override
  public List<Role> roles() {
    return List.of(new Role(ROLE, true), new Role("n", true));
  }

  @Override
  public Optional<OfPairs> read(Reported row) {
    OptionalDouble r = row.number(ROLE);
    OptionalDouble pairs = row.requiredCount("n", 1);
    if (r.isEmpty()) {
      row.missing(ROLE);
      return Optional.empty();
    }
    if (Math.abs(r.getAsDouble()) > 1) {
      row.wrong(
          ROLE,
          "out-of-range",
          "found " + r.getAsDouble() + ", expected a correlation from -1 to 1; correct the value");
      return Optional.empty();
    }
    return pairs.isEmpty()
        ? Optional.empty()
        : Optional.of(new OfPairs(r.getAsDouble(), pairs.getAsDouble()));
  }

  @Override
  public List<StudyEffect> effects(List<OfPairs> studies) {
    return studies.stream().map(Correlation::effect).toList();
  }

  private static StudyEffect effect(OfPairs study) {
    if (Math.abs(study.r()) == 1) {
      return StudyEffect.leftOut(
          "study-left-out",
          "its correlation is "
              + study.r()
              + ", where Fisher's z is infinite; perhaps one measurement was worked out from the"
              + " other");
    }
    double z = (Math.log1p(study.r()) - Math.log1p(-study.r())) / 2;
    return study.pairs() > MOST_WITHOUT_VARIANCE
        ? StudyEffect.of(z, 1 / (study.pairs() - MOST_WITHOUT_VARIANCE))
        : StudyEffect.withoutVariance(
            z,
            "too-few-patients",
            "a correlation of three patients or fewer has no variance, so it has no weight");
  }

  @Override
  public BackTransform shown(List<OfPairs> pooled) {
    return BackTransform.of(Math::tanh);
  }
}
