package gapwise.evidence;

import gapwise.evidence.unit.PartialDate;
import gapwise.evidence.vocabulary.DefinitionKind;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Missing;
import gapwise.evidence.vocabulary.ReadAs;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One body of patients reported in one or more publications, with its arms and what became of them.
 *
 * @param id short, unique in the evidence base, letters, digits and hyphens
 * @param citation where it was published
 * @param reportKind kind of publication
 * @param design design by the methods of the paper
 * @param designWords design in the words of the paper
 * @param centres hospitals
 * @param country country
 * @param setting civil, military or mixed; income group
 * @param recruitmentFrom first recruitment
 * @param recruitmentTo last recruitment
 * @param consecutive whether patients were consecutive
 * @param assessorIndependent whether outcomes were read by someone else than the operating team
 * @param funding funding and interests
 * @param unionDefinition definition of union for the whole study
 * @param infectionDefinition definition of infection for the whole study
 * @param unionDefinitionKinds the same by the vocabulary, as a person confirmed it
 * @param infectionDefinitionKinds the same by the vocabulary, as a person confirmed it
 * @param cohort a name shared by studies that report overlapping patients
 * @param sameStudyAs ids of other records of the same study
 * @param overlapSuspectedWith ids of studies that may tell of the same patients
 * @param readAs what the numbers were read from
 * @param readAt web address of the page that was read
 * @param invented true for demonstration data
 * @param status how far extraction has come
 * @param whole values that the paper gives for all arms together
 * @param arms at least one
 * @param outcomes reported outcomes
 * @param patients patients described one by one
 * @param appraisals what people judged of the way it was made, one for each instrument and matter
 * @param curves published curves of times to an event, one for each arm and outcome
 * @param provenance where the study values stand in the paper
 * @param missing why template columns are empty, by column
 * @param wholeMissing the same for the values of all arms together
 * @param wholeProvenance where the values of all arms together stand in the paper
 * @param wholeNote anything that the fields of all arms together cannot say
 * @param note anything that the fields cannot say
 */
public record Study(
    String id,
    Citation citation,
    ReportKind reportKind,
    Optional<Design> design,
    Optional<String> designWords,
    List<String> centres,
    Optional<String> country,
    Optional<String> setting,
    Optional<PartialDate> recruitmentFrom,
    Optional<PartialDate> recruitmentTo,
    Optional<YesOrNo> consecutive,
    Optional<YesOrNo> assessorIndependent,
    Optional<String> funding,
    Optional<String> unionDefinition,
    Optional<String> infectionDefinition,
    List<DefinitionKind> unionDefinitionKinds,
    List<DefinitionKind> infectionDefinitionKinds,
    Optional<String> cohort,
    List<String> sameStudyAs,
    List<String> overlapSuspectedWith,
    Optional<ReadAs> readAs,
    Optional<String> readAt,
    boolean invented,
    ExtractionStatus status,
    Baseline whole,
    List<Arm> arms,
    List<OutcomeReport> outcomes,
    List<PatientRow> patients,
    List<Appraisal> appraisals,
    List<PublishedCurve> curves,
    Provenance provenance,
    SortedMap<String, Missing> missing,
    SortedMap<String, Missing> wholeMissing,
    Provenance wholeProvenance,
    Optional<String> wholeNote,
    Optional<String> note) {

  public Study {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(citation, "citation");
    Objects.requireNonNull(reportKind, "reportKind");
    Objects.requireNonNull(design, "design");
    Objects.requireNonNull(designWords, "designWords");
    centres = List.copyOf(centres);
    Objects.requireNonNull(country, "country");
    Objects.requireNonNull(setting, "setting");
    Objects.requireNonNull(recruitmentFrom, "recruitmentFrom");
    Objects.requireNonNull(recruitmentTo, "recruitmentTo");
    Objects.requireNonNull(consecutive, "consecutive");
    Objects.requireNonNull(assessorIndependent, "assessorIndependent");
    Objects.requireNonNull(funding, "funding");
    Objects.requireNonNull(unionDefinition, "unionDefinition");
    Objects.requireNonNull(infectionDefinition, "infectionDefinition");
    unionDefinitionKinds = List.copyOf(unionDefinitionKinds);
    infectionDefinitionKinds = List.copyOf(infectionDefinitionKinds);
    Objects.requireNonNull(cohort, "cohort");
    sameStudyAs = List.copyOf(sameStudyAs);
    overlapSuspectedWith = List.copyOf(overlapSuspectedWith);
    Objects.requireNonNull(readAs, "readAs");
    Objects.requireNonNull(readAt, "readAt");
    Objects.requireNonNull(status, "status");
    Objects.requireNonNull(whole, "whole");
    arms = List.copyOf(arms);
    outcomes = List.copyOf(outcomes);
    patients = List.copyOf(patients);
    appraisals = List.copyOf(appraisals);
    curves = List.copyOf(curves);
    Objects.requireNonNull(provenance, "provenance");
    missing = Collections.unmodifiableSortedMap(new TreeMap<>(missing));
    wholeMissing = Collections.unmodifiableSortedMap(new TreeMap<>(wholeMissing));
    // Text that was stored before this field existed has none.
    wholeProvenance = Objects.requireNonNullElse(wholeProvenance, Provenance.NOWHERE);
    Objects.requireNonNull(wholeNote, "wholeNote");
    Objects.requireNonNull(note, "note");
    Ids.require("study id", id);
    if (arms.isEmpty()) {
      throw new IllegalArgumentException("study " + id + " needs at least one arm");
    }
    Set<String> armIds = new HashSet<>();
    for (Arm arm : arms) {
      if (!armIds.add(arm.id())) {
        throw new IllegalArgumentException("study " + id + " has two arms " + arm.id());
      }
    }
    for (OutcomeReport outcome : outcomes) {
      if (!armIds.containsAll(outcome.scope().armIds())) {
        throw new IllegalArgumentException(
            "study " + id + " has an outcome of an unknown arm " + outcome.scope().armIds());
      }
    }
    Set<String> patientIds = new HashSet<>();
    for (PatientRow patient : patients) {
      if (!armIds.contains(patient.armId())) {
        throw new IllegalArgumentException(
            "study " + id + " has a patient of an unknown arm " + patient.armId());
      }
      if (!patientIds.add(patient.id())) {
        throw new IllegalArgumentException("study " + id + " has two patients " + patient.id());
      }
    }
    Set<List<String>> ofCurves = new HashSet<>();
    for (PublishedCurve curve : curves) {
      if (!armIds.contains(curve.arm())) {
        throw new IllegalArgumentException(
            "study " + id + " has a curve of an unknown arm " + curve.arm());
      }
      if (!ofCurves.add(List.of(curve.arm(), curve.outcome().code()))) {
        throw new IllegalArgumentException(
            "study " + id + " has two curves of " + curve.outcome().code() + " of " + curve.arm());
      }
    }
    Set<Appraisal.Matter> matters = new HashSet<>();
    for (Appraisal appraisal : appraisals) {
      if (!matters.add(appraisal.matter())) {
        throw new IllegalArgumentException(
            "study " + id + " is judged twice of one matter: " + appraisal.matter());
      }
    }
  }

  /** The arm with this id, if there is one. */
  public Optional<Arm> arm(String armId) {
    return arms.stream().filter(arm -> arm.id().equals(armId)).findFirst();
  }

  /** The patients of an arm that are described one by one, in their order. */
  public List<PatientRow> patientsOf(String armId) {
    return patients.stream().filter(patient -> patient.armId().equals(armId)).toList();
  }

  /** Starts a value of which only the given parts are known. */
  public static StudyBuilder with(String id, Citation citation) {
    return new StudyBuilder(id, citation);
  }

  /** Starts from this value, to change some parts. */
  public StudyBuilder but() {
    return new StudyBuilder(this);
  }
}
