package gapwise.place;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Answers;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Phase;
import gapwise.evidence.vocabulary.Standing;
import gapwise.search.SearchAnswer.ArmHit;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.selection.Question;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * What cases of each method usually have, by one state of the evidence base, worked out at the
 * first need of a method. Safe for use by many threads.
 */
public final class UsualCourses {
  /** Milestones and phases offered at first; few enough for one look. Our choice. */
  private static final int MOST_MILESTONES = 3;

  private static final int MOST_PHASES = 4;
  private static final String PHASE_OUTCOME = "treatment-phase";

  private final Answers answers;
  private final StudySearch search;
  private final Function<String, Optional<Study>> studies;
  private final Map<Optional<Method>, UsualCourse> found = new ConcurrentHashMap<>();

  /**
   * @param answers of the evidence base
   * @param search in the same state of it
   * @param studies its studies by id
   */
  public UsualCourses(
      Answers answers, StudySearch search, Function<String, Optional<Study>> studies) {
    this.answers = Objects.requireNonNull(answers, "answers");
    this.search = Objects.requireNonNull(search, "search");
    this.studies = Objects.requireNonNull(studies, "studies");
  }

  /**
   * What is usual of a method.
   *
   * @param method empty for all methods together
   */
  public UsualCourse of(Optional<Method> method) {
    return found.computeIfAbsent(method, this::workedOut);
  }

  private UsualCourse workedOut(Optional<Method> method) {
    SearchRequest among =
        method
            .map(one -> SearchRequest.EVERYTHING.withMethods(Set.of(one.code())))
            .orElse(SearchRequest.EVERYTHING);
    UsualCourse common = UsualCourse.unreported(method.map(Method::frame).orElse(true));
    Map<Milestone, List<SelectedRow>> reported = new EnumMap<>(Milestone.class);
    Map<Milestone, String> hints = new EnumMap<>(Milestone.class);
    for (Milestone milestone : Milestone.values()) {
      if (milestone.isTime()) {
        Question question = Question.about(milestone.outcome(), among);
        Selection selection = answers.select(question.withClock(milestone.onlyClock())).byMethod();
        List<SelectedRow> rows =
            selection.rows().stream().filter(row -> isOf(row, method)).toList();
        List<Double> averages =
            rows.stream().flatMap(row -> months(row.value()).stream().boxed()).toList();
        if (!averages.isEmpty()) {
          reported.put(milestone, rows);
          hints.put(milestone, hint(milestone, selection, UsualSpan.of(averages)));
        }
      }
    }
    Map<Phase, List<Double>> phases = phases(method, among);
    Map<Phase, String> phaseHints = new EnumMap<>(Phase.class);
    phases.forEach(
        (phase, months) ->
            phaseHints.put(
                phase, say("place.usual-phase", Map.of("usual", UsualSpan.of(months).words()))));
    return new UsualCourse(
        reported.isEmpty() ? common.milestones() : most(reported, MOST_MILESTONES),
        phases.isEmpty() ? common.phases() : most(inOneLayer(phases), MOST_PHASES),
        hints,
        phaseHints);
  }

  private static boolean isOf(SelectedRow row, Optional<Method> method) {
    return method.isEmpty() || row.arm().method().principal().equals(method.get());
  }

  private static OptionalDouble months(ReportedValue value) {
    return value instanceof ReportedValue.Quantity quantity
            && quantity.summary().unit().dimension() == Unit.MONTHS.dimension()
        ? quantity.summary().in(Unit.MONTHS).centre()
        : OptionalDouble.empty();
  }

  private static String hint(Milestone milestone, Selection selection, UsualSpan span) {
    if (milestone.onlyClock().isPresent()) {
      return say("place.usual-in-frame", Map.of("usual", span.words()));
    }
    Optional<Clock> clock = selection.clock();
    if (clock.isEmpty()) {
      return say("place.usual-on-no-clock", Map.of("usual", span.words()));
    }
    return say(
        selection.rowsWithoutClock() > 0 ? "place.usual-mostly-on-clock" : "place.usual-on-clock",
        Map.of("usual", span.words(), "clock", clock.get().label()));
  }

  /** The average months of each phase, by group of patients. */
  private Map<Phase, List<Double>> phases(Optional<Method> method, SearchRequest among) {
    Map<Phase, List<Double>> months = new EnumMap<>(Phase.class);
    for (ArmHit hit : search.everyArm(among.withOutcomes(Set.of(PHASE_OUTCOME)))) {
      studies.apply(hit.studyId()).stream()
          .filter(study -> isOf(study, hit.armId(), method))
          .flatMap(study -> study.outcomes().stream())
          .filter(report -> counts(report, hit.armId()))
          .forEach(
              report ->
                  months(report.value())
                      .ifPresent(
                          average ->
                              months
                                  .computeIfAbsent(
                                      report.phase().orElseThrow(), phase -> new ArrayList<>())
                                  .add(average)));
    }
    return months;
  }

  private static boolean isOf(Study study, String arm, Optional<Method> method) {
    return method.isEmpty()
        || study.arm(arm).filter(one -> one.method().principal().equals(method.get())).isPresent();
  }

  private static boolean counts(OutcomeReport report, String arm) {
    return report.outcome().code().equals(PHASE_OUTCOME)
        && report.phase().isPresent()
        && report.subgroup().isEmpty()
        && report.standing() == Standing.COUNTS
        && report.scope().equals(new Scope.OneArm(arm));
  }

  /** Without the frame as a whole where its parts are there: both would count the time twice. */
  private static Map<Phase, List<Double>> inOneLayer(Map<Phase, List<Double>> phases) {
    Map<Phase, List<Double>> layer = new EnumMap<>(phases);
    if (phases.containsKey(Phase.DISTRACTION) || phases.containsKey(Phase.CONSOLIDATION)) {
      layer.remove(Phase.IN_FRAME);
    }
    return layer;
  }

  /** Those reported by most groups, in the order of their list. */
  private static <E extends Enum<E>> List<E> most(Map<E, ? extends List<?>> reported, int most) {
    return reported.entrySet().stream()
        .sorted(
            Comparator.comparingInt((Map.Entry<E, ? extends List<?>> one) -> one.getValue().size())
                .reversed())
        .limit(most)
        .map(Map.Entry::getKey)
        .sorted()
        .toList();
  }

  /** Milestones to offer where no group reports any; common practice, no source. */
  static List<Milestone> commonMilestones(boolean frame) {
    return Stream.of(Milestone.FRAME_OFF, Milestone.FULL, Milestone.END)
        .filter(one -> frame || one != Milestone.FRAME_OFF)
        .toList();
  }

  /** Phases to offer where no group reports any; common practice, no source. */
  static List<Phase> commonPhases(boolean frame) {
    return frame
        ? List.of(Phase.IN_FRAME, Phase.UNSUPPORTED)
        : List.of(Phase.NO_WEIGHT_BEARING, Phase.PARTIAL_WEIGHT_BEARING, Phase.UNSUPPORTED);
  }
}
