package gapwise.search;

import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What the index knows of an arm without reading its record.
 *
 * @param studyId its study
 * @param method code of its principal method
 * @param design design of its study; empty where the paper gives none
 * @param infected whether its patients were infected at the start; empty where nothing is said
 * @param centreCentimetres mean or median missing length; empty where no middle is reported
 * @param patients patients treated; empty where unknown
 * @param apart why it is shown and never pooled, in words such as "retracted"; empty for most
 */
public record IndexedArm(
    String studyId,
    String method,
    Optional<Design> design,
    Optional<YesOrNo> infected,
    OptionalDouble centreCentimetres,
    OptionalInt patients,
    Optional<String> apart) {
  public IndexedArm {
    Objects.requireNonNull(studyId, "studyId");
    Objects.requireNonNull(method, "method");
    Objects.requireNonNull(design, "design");
    Objects.requireNonNull(infected, "infected");
    Objects.requireNonNull(centreCentimetres, "centreCentimetres");
    Objects.requireNonNull(patients, "patients");
    Objects.requireNonNull(apart, "apart");
  }
}
