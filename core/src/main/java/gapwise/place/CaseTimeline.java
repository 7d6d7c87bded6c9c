package gapwise.place;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.AnswerForest;
import gapwise.answer.Cited;
import gapwise.answer.Edition;
import gapwise.answer.ModelWords;
import gapwise.answer.People;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Phase;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.timeline.Timeline;
import gapwise.figure.timeline.Timeline.Load;
import gapwise.selection.SelectedRow;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** The timeline of a placed case: a track for each clock that has series beside the case. */
public final class CaseTimeline {
  private final PlacedCase placed;
  private final Course course;

  private CaseTimeline(PlacedCase placed) {
    this.placed = placed;
    this.course = placed.patientCase().course();
  }

  /**
   * The figure; empty where there is neither a time on a clock nor a phase.
   *
   * @param edition of program and evidence base
   */
  public static Optional<Timeline> of(PlacedCase placed, Edition edition) {
    return new CaseTimeline(placed).timeline(edition);
  }

  private Optional<Timeline> timeline(Edition edition) {
    List<Timeline.Track> tracks = new ArrayList<>();
    if (!course.stays().isEmpty() && !course.origins().containsValue(0.0)) {
      tracks.add(
          new Timeline.Track(
              say("place.start-of-course"), stretches(course, 0), List.of(), List.of()));
    }
    for (Clock clock : clocks()) {
      tracks.add(track(clock));
    }
    if (tracks.isEmpty()) {
      return Optional.empty();
    }
    List<String> cautions = new ArrayList<>();
    cautions.add(AnswerForest.NO_COMPARISON);
    cautions.addAll(AnswerForest.CAUTIONS);
    return Optional.of(
        new Timeline(
            say("place.course"),
            tracks.size() > 1 ? List.of(say("place.tracks-apart")) : List.of(),
            tracks,
            cautions,
            provenance(edition)));
  }

  /**
   * Clocks with a time of the case that series stand beside, entered by itself, or at the start.
   */
  private Set<Clock> clocks() {
    Set<Clock> clocks = new TreeSet<>();
    for (PlacedMilestone one : placed.milestones()) {
      if (!one.methods().isEmpty() || !one.reached().fromCourse()) {
        one.reached().clock().ifPresent(clocks::add);
      }
    }
    course.origins().entrySet().stream()
        .filter(origin -> origin.getValue() == 0)
        .map(Map.Entry::getKey)
        .forEach(clocks::add);
    return clocks;
  }

  private Timeline.Track track(Clock clock) {
    List<PlacedMilestone> here =
        placed.milestones().stream()
            .filter(one -> one.reached().clock().equals(Optional.of(clock)))
            .sorted(Comparator.comparingDouble((PlacedMilestone one) -> one.reached().value()))
            .toList();
    Double origin = course.origins().get(clock);
    List<Timeline.Pooled> pooled = new ArrayList<>();
    for (PlacedMilestone one : here) {
      for (MethodPlace place : one.methods()) {
        place
            .average()
            .ifPresent(
                average ->
                    pooled.add(
                        new Timeline.Pooled(
                            one.reached().milestone().within(),
                            kind(place.method()),
                            place.series(),
                            average,
                            place.prediction())));
      }
    }
    return new Timeline.Track(
        clock.label(),
        origin == null ? List.of() : stretches(course, origin),
        here.stream()
            .map(
                one ->
                    new Timeline.Reached(one.reached().milestone().within(), one.reached().value()))
            .toList(),
        pooled);
  }

  private static MethodMark kind(Method method) {
    return new MethodMark(method.code(), method.shortLabel(), method.mark(), method.colour());
  }

  /** The phases of a course in months from one of its moments. */
  static List<Timeline.Stretch> stretches(Course course, double origin) {
    List<Timeline.Stretch> stretches = new ArrayList<>();
    for (int i = 0; i < course.stays().size(); i++) {
      Phase phase = course.stays().get(i).phase();
      stretches.add(
          new Timeline.Stretch(
              i + 1,
              phase.label(),
              load(phase),
              course.monthsBefore(i) - origin,
              course.monthsBefore(i + 1) - origin));
    }
    return stretches;
  }

  private static Load load(Phase phase) {
    return switch (phase) {
      case TEMPORARY_FRAME, LATENCY, DISTRACTION, CONSOLIDATION, IN_FRAME -> Load.FRAME;
      case BETWEEN_STAGES -> Load.WAITING;
      case NO_WEIGHT_BEARING -> Load.NONE;
      case PARTIAL_WEIGHT_BEARING -> Load.PARTIAL;
      case FULL_IN_SUPPORT -> Load.IN_SUPPORT;
      case UNSUPPORTED -> Load.FREE;
    };
  }

  private FigureProvenance provenance(Edition edition) {
    List<SelectedRow> groups = placed.groups();
    String data =
        placed.milestones().stream()
            .flatMap(one -> one.dataVersion().stream())
            .map(hash -> hash.substring(0, Math.min(8, hash.length())))
            .distinct()
            .collect(Collectors.joining(" "));
    String model =
        placed.milestones().stream()
            .flatMap(one -> one.plans().stream())
            .findFirst()
            .map(ModelWords::model)
            .orElseGet(() -> say("place.no-model"));
    return new FigureProvenance(
            People.series(groups),
            "",
            model,
            data.isEmpty() ? edition.words() : edition.wordsOfData(data),
            edition.date(),
            groups.stream().anyMatch(row -> row.study().invented()))
        .citing(Cited.of(groups));
  }
}
