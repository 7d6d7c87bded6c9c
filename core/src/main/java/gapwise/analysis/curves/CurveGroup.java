package gapwise.analysis.curves;

import gapwise.synthesis.survival.KaplanMeier;
import gapwise.synthesis.survival.PatientTimes;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The patients of one curve.
 *
 * @param group and study, as far as the data tell them apart
 * @param difference largest one between a reconstructed curve and what was read
 */
record CurveGroup(
    Optional<String> group,
    Optional<String> study,
    PatientTimes times,
    KaplanMeier curve,
    OptionalDouble difference) {

  static CurveGroup of(
      Optional<String> group, Optional<String> study, PatientTimes times, OptionalDouble differs) {
    return new CurveGroup(group, study, times, KaplanMeier.of(times), differs);
  }

  /** Study and group, for people. */
  String name() {
    String name = Stream.concat(study.stream(), group.stream()).collect(Collectors.joining(", "));
    return name.isEmpty() ? "all patients" : name;
  }
}
