package gapwise.evidence;

import gapwise.evidence.unit.PartialDate;
import gapwise.evidence.vocabulary.DefinitionKind;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Missing;
import gapwise.evidence.vocabulary.ReadAs;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Collects the parts of a {@link Study} that a paper gives. Not thread-safe. */
public final class StudyBuilder {
  private final String id;
  private final Citation citation;
  private ReportKind reportKind = ReportKind.ARTICLE;
  private Optional<Design> design = Optional.empty();
  private Optional<String> designWords = Optional.empty();
  private List<String> centres = List.of();
  private Optional<String> country = Optional.empty();
  private Optional<String> setting = Optional.empty();
  private Optional<PartialDate> recruitmentFrom = Optional.empty();
  private Optional<PartialDate> recruitmentTo = Optional.empty();
  private Optional<YesOrNo> consecutive = Optional.empty();
  private Optional<YesOrNo> assessorIndependent = Optional.empty();
  private Optional<String> funding = Optional.empty();
  private Optional<String> unionDefinition = Optional.empty();
  private Optional<String> infectionDefinition = Optional.empty();
  private List<DefinitionKind> unionDefinitionKinds = List.of();
  private List<DefinitionKind> infectionDefinitionKinds = List.of();
  private Optional<String> cohort = Optional.empty();
  private List<String> sameStudyAs = List.of();
  private List<String> overlapSuspectedWith = List.of();
  private Optional<ReadAs> readAs = Optional.empty();
  private Optional<String> readAt = Optional.empty();
  private boolean invented;
  private ExtractionStatus status = ExtractionStatus.EXTRACTED;
  private Baseline whole = Baseline.NOTHING;
  private List<Arm> arms = List.of();
  private List<OutcomeReport> outcomes = List.of();
  private List<PatientRow> patients = List.of();
  private List<Appraisal> appraisals = List.of();
  private List<PublishedCurve> curves = List.of();
  private Provenance provenance = Provenance.NOWHERE;
  private SortedMap<String, Missing> missing = new TreeMap<>();
  private SortedMap<String, Missing> wholeMissing = new TreeMap<>();
  private Provenance wholeProvenance = Provenance.NOWHERE;
  private Optional<String> wholeNote = Optional.empty();
  private Optional<String> note = Optional.empty();

  StudyBuilder(String id, Citation citation) {
    this.id = id;
    this.citation = citation;
  }

  StudyBuilder(Study study) {
    this(study.id(), study.citation());
    reportKind = study.reportKind();
    design = study.design();
    designWords = study.designWords();
    centres = study.centres();
    country = study.country();
    setting = study.setting();
    recruitmentFrom = study.recruitmentFrom();
    recruitmentTo = study.recruitmentTo();
    consecutive = study.consecutive();
    assessorIndependent = study.assessorIndependent();
    funding = study.funding();
    unionDefinition = study.unionDefinition();
    infectionDefinition = study.infectionDefinition();
    unionDefinitionKinds = study.unionDefinitionKinds();
    infectionDefinitionKinds = study.infectionDefinitionKinds();
    cohort = study.cohort();
    sameStudyAs = study.sameStudyAs();
    overlapSuspectedWith = study.overlapSuspectedWith();
    readAs = study.readAs();
    readAt = study.readAt();
    invented = study.invented();
    status = study.status();
    whole = study.whole();
    arms = study.arms();
    outcomes = study.outcomes();
    patients = study.patients();
    appraisals = study.appraisals();
    curves = study.curves();
    provenance = study.provenance();
    missing = study.missing();
    wholeMissing = study.wholeMissing();
    wholeProvenance = study.wholeProvenance();
    wholeNote = study.wholeNote();
    note = study.note();
  }

  public StudyBuilder reportKind(ReportKind value) {
    reportKind = value;
    return this;
  }

  public StudyBuilder design(Design value) {
    design = Optional.of(value);
    return this;
  }

  public StudyBuilder designWords(String value) {
    designWords = Optional.of(value);
    return this;
  }

  public StudyBuilder centres(List<String> value) {
    centres = value;
    return this;
  }

  public StudyBuilder country(String value) {
    country = Optional.of(value);
    return this;
  }

  public StudyBuilder setting(String value) {
    setting = Optional.of(value);
    return this;
  }

  public StudyBuilder recruitmentFrom(PartialDate value) {
    recruitmentFrom = Optional.of(value);
    return this;
  }

  public StudyBuilder recruitmentTo(PartialDate value) {
    recruitmentTo = Optional.of(value);
    return this;
  }

  public StudyBuilder consecutive(YesOrNo value) {
    consecutive = Optional.of(value);
    return this;
  }

  public StudyBuilder assessorIndependent(YesOrNo value) {
    assessorIndependent = Optional.of(value);
    return this;
  }

  public StudyBuilder funding(String value) {
    funding = Optional.of(value);
    return this;
  }

  public StudyBuilder unionDefinition(String value) {
    unionDefinition = Optional.of(value);
    return this;
  }

  public StudyBuilder infectionDefinition(String value) {
    infectionDefinition = Optional.of(value);
    return this;
  }

  public StudyBuilder unionDefinitionKinds(List<DefinitionKind> value) {
    unionDefinitionKinds = value;
    return this;
  }

  public StudyBuilder infectionDefinitionKinds(List<DefinitionKind> value) {
    infectionDefinitionKinds = value;
    return this;
  }

  public StudyBuilder cohort(String value) {
    cohort = Optional.of(value);
    return this;
  }

  public StudyBuilder sameStudyAs(List<String> value) {
    sameStudyAs = value;
    return this;
  }

  public StudyBuilder overlapSuspectedWith(List<String> value) {
    overlapSuspectedWith = value;
    return this;
  }

  public StudyBuilder readAs(ReadAs value) {
    readAs = Optional.of(value);
    return this;
  }

  public StudyBuilder readAt(String value) {
    readAt = Optional.of(value);
    return this;
  }

  public StudyBuilder invented(boolean value) {
    invented = value;
    return this;
  }

  public StudyBuilder status(ExtractionStatus value) {
    status = value;
    return this;
  }

  public StudyBuilder whole(Baseline value) {
    whole = value;
    return this;
  }

  public StudyBuilder arms(List<Arm> value) {
    arms = value;
    return this;
  }

  public StudyBuilder outcomes(List<OutcomeReport> value) {
    outcomes = value;
    return this;
  }

  public StudyBuilder patients(List<PatientRow> value) {
    patients = value;
    return this;
  }

  public StudyBuilder appraisals(List<Appraisal> value) {
    appraisals = value;
    return this;
  }

  public StudyBuilder curves(List<PublishedCurve> value) {
    curves = value;
    return this;
  }

  public StudyBuilder provenance(Provenance value) {
    provenance = value;
    return this;
  }

  public StudyBuilder missing(SortedMap<String, Missing> value) {
    missing = value;
    return this;
  }

  public StudyBuilder wholeAt(Provenance at, SortedMap<String, Missing> why, Optional<String> n) {
    wholeProvenance = at;
    wholeMissing = why;
    wholeNote = n;
    return this;
  }

  public StudyBuilder note(String value) {
    note = Optional.of(value);
    return this;
  }

  /** The value, checked. */
  public Study build() {
    return new Study(
        id,
        citation,
        reportKind,
        design,
        designWords,
        centres,
        country,
        setting,
        recruitmentFrom,
        recruitmentTo,
        consecutive,
        assessorIndependent,
        funding,
        unionDefinition,
        infectionDefinition,
        unionDefinitionKinds,
        infectionDefinitionKinds,
        cohort,
        sameStudyAs,
        overlapSuspectedWith,
        readAs,
        readAt,
        invented,
        status,
        whole,
        arms,
        outcomes,
        patients,
        appraisals,
        curves,
        provenance,
        missing,
        wholeMissing,
        wholeProvenance,
        wholeNote,
        note);
  }
}
