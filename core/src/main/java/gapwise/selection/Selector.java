package gapwise.selection;

import gapwise.appraisal.StudyRisk;
import gapwise.cohort.CohortLinks;
import gapwise.curation.KeptStudy;
import gapwise.curation.StudiesAt;
import gapwise.evidence.AllGroups;
import gapwise.evidence.Definition;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.evidence.vocabulary.Risk;
import gapwise.problem.Problem;
import gapwise.search.SearchAnswer.ArmHit;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.selection.Question.SuspectedOverlap;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/**
 * Answers questions from the evidence base: the search finds the arms, the rules of this room take
 * one value of each, and say of all others why not. Safe for use by many threads.
 */
public final class Selector {
  private final StudySearch search;
  private final StudiesAt studies;
  private final CohortLinks links;
  private final UnaryOperator<Study> view;

  /** A selector of one state that knows of no decision about shared patients. */
  public Selector(StudySearch search, StudiesAt studies) {
    this(search, studies, CohortLinks.NONE);
  }

  /**
   * @param search the search of one state
   * @param studies the studies of the same state
   * @param links what persons settled in this state of studies that may share patients
   */
  public Selector(StudySearch search, StudiesAt studies, CohortLinks links) {
    this(search, studies, links, UnaryOperator.identity());
  }

  private Selector(
      StudySearch search, StudiesAt studies, CohortLinks links, UnaryOperator<Study> view) {
    this.view = view;
    this.links = Objects.requireNonNull(links, "links");
    this.search = Objects.requireNonNull(search, "search");
    this.studies = Objects.requireNonNull(studies, "studies");
    if (search.change() != studies.change()) {
      throw new IllegalArgumentException(
          "search and studies must be of one state, were "
              + search.change()
              + " and "
              + studies.change());
    }
  }

  /** The same rules over records seen otherwise, such as with curves in place of numbers. */
  public Selector through(UnaryOperator<Study> other) {
    return new Selector(search, studies, links, other);
  }

  /** Selects the rows that answer a question; the same records give the same selection. */
  public Selection select(Question question) {
    DataHash hash = new DataHash();
    hash.add(links);
    List<ArmCase> found = arms(search.everyArmOrNotSaid(reporting(question)), hash::add);
    List<LeftOut> leftOut = new ArrayList<>();
    List<Sorted> sorted = new ArrayList<>();
    for (ArmCase arm : found) {
      Optional<Reason> barred =
          againstStudy(question, arm.study())
              .or(() -> arm.arm().keptApart().map(Reason.NeverPooled::new));
      if (barred.isPresent()) {
        leftOut.add(arm.leftOut(barred.get()));
      } else {
        sorted.add(Sorted.of(question, arm));
      }
    }
    List<StudyGroups> studiesFound = StudyGroups.of(question, sorted);
    List<ArmReports> reports =
        studiesFound.stream().flatMap(StudyGroups::all).map(Sorted::reports).toList();
    Clocks clocks = Clocks.settle(question, reports);
    Currencies currencies = Currencies.settle(question, reports);
    CountForms forms = CountForms.settle(question, reports);
    List<SelectedRow> rows = new ArrayList<>();
    for (StudyGroups study : studiesFound) {
      StudyGroups.Chosen chosen = study.choose(question, clocks, currencies, forms);
      rows.addAll(chosen.rows());
      leftOut.addAll(chosen.leftOut());
    }
    List<SelectedRow> kept =
        StudyNames.toldApart(
            withoutOverlap(
                question,
                asDefined(question, largeEnough(question, rows, leftOut), leftOut),
                leftOut));
    List<Problem> notes =
        Notes.on(question, search.looseWords(question.among().text()), clocks, forms, links, kept);
    notes.addAll(LengthNotes.on(kept, leftOut));
    return new Selection(
        question,
        kept,
        inOrder(leftOut, found),
        notes,
        clocks.chosen(),
        clocks.silentStay(),
        clocks.present(),
        hash.hexadecimal(),
        search.change());
  }

  /**
   * The row that each of some arms gives by itself, for those that give one: chosen as {@link
   * #select} does, but on the clock and in the currency of the arm, whatever others report, and
   * whether or not its patients overlap with others or are kept apart. Where no arm of a study
   * gives a row and the paper has one value for all of them together, that is its row. Reads the
   * records of these arms alone.
   *
   * @param question what is asked of them; its search is not run
   */
  public List<SelectedRow> rowsOf(Question question, List<ArmHit> arms) {
    List<SelectedRow> rows = new ArrayList<>();
    Set<String> allGroups = new HashSet<>();
    for (ArmCase arm : arms(arms, read -> {})) {
      if (againstStudy(question, arm.study()).isEmpty()) {
        Optional<SelectedRow> own = alone(question, arm);
        own.ifPresent(rows::add);
        if (own.isEmpty() && allGroups.add(arm.study().id())) {
          ofAllGroups(question, arm).ifPresent(rows::add);
        }
      }
    }
    return StudyNames.toldApart(rows);
  }

  private static Optional<SelectedRow> alone(Question question, ArmCase arm) {
    Sorted sorted = Sorted.of(question, arm);
    List<ArmReports> reports = List.of(sorted.reports());
    return sorted.choose(
        new ArmChoice(
            question,
            Clocks.settle(question, reports),
            Currencies.settle(question, reports),
            CountForms.settle(question, reports),
            arm));
  }

  private static Optional<SelectedRow> ofAllGroups(Question question, ArmCase one) {
    boolean severalSilent =
        one.study().arms().size() > 1
            && one.study().arms().stream()
                .map(arm -> new ArmCase(one.kept(), arm))
                .allMatch(arm -> alone(question, arm).isEmpty());
    return severalSilent ? alone(question, one.allGroups()) : Optional.empty();
  }

  /** Arms with their records, in the order given; each study is read once and passed on. */
  private List<ArmCase> arms(List<ArmHit> hits, Consumer<Study> read) {
    Map<String, KeptStudy> kept =
        studies.studies(hits.stream().map(ArmHit::studyId).collect(Collectors.toSet()));
    List<ArmCase> arms = new ArrayList<>();
    kept.replaceAll((id, one) -> new KeptStudy(view.apply(one.study()), one.stamp()));
    String before = "";
    for (ArmHit hit : hits) {
      KeptStudy study = kept.get(hit.studyId());
      if (study == null) {
        throw new IllegalStateException(
            "the index holds the study " + hit.studyId() + ", the store does not");
      }
      if (!hit.studyId().equals(before)) {
        before = hit.studyId();
        read.accept(study.study());
      }
      study.study().arm(hit.armId()).ifPresent(arm -> arms.add(new ArmCase(study, arm)));
    }
    return arms;
  }

  /**
   * Narrows to arms of which the outcome is reported in some form, so that others are not read. The
   * risk of bias is that of the result for this outcome, which the index does not tell.
   */
  private static SearchRequest reporting(Question question) {
    return question.among().withOutcomes(Set.of(question.outcome().code())).withRisks(Set.of());
  }

  private static Optional<Reason> againstStudy(Question question, Study study) {
    if (study.reportKind() == ReportKind.RETRACTION) {
      return Optional.of(Reason.Plain.RETRACTED);
    }
    return question
        .leastStatus()
        .filter(least -> study.status().compareTo(least) < 0)
        .<Reason>map(least -> new Reason.StatusTooEarly(study.status(), least))
        .or(() -> atRisk(question, study));
  }

  private static Optional<Reason> atRisk(Question question, Study study) {
    Set<Risk> asked = question.among().risks();
    return Optional.of(StudyRisk.of(study, question.outcome()))
        .filter(risk -> !asked.isEmpty() && !asked.contains(risk))
        .map(Reason.RiskOfBias::new);
  }

  private static List<SelectedRow> largeEnough(
      Question question, List<SelectedRow> rows, List<LeftOut> leftOut) {
    List<SelectedRow> kept = new ArrayList<>();
    for (SelectedRow row : rows) {
      int size = row.speaksOf().orElse(question.minimumPatients());
      if (size >= question.minimumPatients()) {
        kept.add(row);
      } else {
        leftOut.add(leftOut(row, new Reason.TooFewPatients(size, question.minimumPatients())));
      }
    }
    return kept;
  }

  private static List<SelectedRow> asDefined(
      Question question, List<SelectedRow> rows, List<LeftOut> leftOut) {
    if (question.definition().isEmpty()) {
      return rows;
    }
    List<SelectedRow> kept = new ArrayList<>();
    for (SelectedRow row : rows) {
      Definition definition = row.definition();
      if (question.definition().get().fits(definition)) {
        kept.add(row);
      } else {
        leftOut.add(leftOut(row, new Reason.OtherDefinition(definition)));
      }
    }
    return kept;
  }

  private List<SelectedRow> withoutOverlap(
      Question question, List<SelectedRow> rows, List<LeftOut> leftOut) {
    List<CohortLinks.Link> counted = links.counted(question.outcome().code());
    Map<SelectedRow, Reason> groups = Cohorts.groupsGivingWay(rows, counted);
    List<SelectedRow> once = without(row -> Optional.ofNullable(groups.get(row)), rows, leftOut);
    Map<String, Reason> studies = Cohorts.givingWay(once, counted);
    List<SelectedRow> kept =
        without(row -> Optional.ofNullable(studies.get(row.study().id())), once, leftOut);
    if (question.suspectedOverlap() == SuspectedOverlap.KEEP) {
      return kept;
    }
    Map<String, Reason> suspected = Cohorts.givingWayOnSuspicion(kept, links);
    return without(row -> Optional.ofNullable(suspected.get(row.study().id())), kept, leftOut);
  }

  private static List<SelectedRow> without(
      Function<SelectedRow, Optional<Reason>> givesWay,
      List<SelectedRow> rows,
      List<LeftOut> leftOut) {
    List<SelectedRow> kept = new ArrayList<>();
    for (SelectedRow row : rows) {
      Optional<Reason> reason = givesWay.apply(row);
      if (reason.isEmpty()) {
        kept.add(row);
      } else {
        leftOut.add(leftOut(row, reason.get()));
      }
    }
    return kept;
  }

  private static LeftOut leftOut(SelectedRow row, Reason reason) {
    return new LeftOut(row.study().id(), row.arm().id(), row.label(), reason);
  }

  private static List<LeftOut> inOrder(List<LeftOut> leftOut, List<ArmCase> found) {
    Map<ArmHit, Integer> places = new HashMap<>();
    for (int i = 0; i < found.size(); i++) {
      String study = found.get(i).study().id();
      places.put(new ArmHit(study, found.get(i).arm().id()), i);
      // All groups of a study as one stand after the last of them.
      places.put(new ArmHit(study, AllGroups.ID), i);
    }
    return leftOut.stream()
        .sorted(Comparator.comparingInt(one -> places.get(new ArmHit(one.studyId(), one.armId()))))
        .toList();
  }
}
