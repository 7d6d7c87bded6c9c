package gapwise.place;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Edition;
import gapwise.answer.People;
import gapwise.evidence.vocabulary.Clock;
import gapwise.figure.FigureProvenance;
import gapwise.figure.timeline.Timeline;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** The timeline of a case alone, with no series beside it: quick enough to follow the typing. */
public final class CaseSketch {
  private CaseSketch() {}

  /**
   * The figure; empty where there is neither a time on a clock nor a phase.
   *
   * @param edition of program and evidence base
   */
  public static Optional<Timeline> of(PatientCase patientCase, Edition edition) {
    Course course = patientCase.course();
    List<Timeline.Track> tracks = new ArrayList<>();
    if (!course.stays().isEmpty() && !course.origins().containsValue(0.0)) {
      tracks.add(
          new Timeline.Track(
              say("place.start-of-drawn-course"),
              CaseTimeline.stretches(course, 0),
              List.of(),
              List.of()));
    }
    for (Clock clock : clocks(patientCase)) {
      Double origin = course.origins().get(clock);
      tracks.add(
          new Timeline.Track(
              clock.label(),
              origin == null ? List.of() : CaseTimeline.stretches(course, origin),
              reached(patientCase, clock),
              List.of()));
    }
    return tracks.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Timeline(
                say("place.course-alone"),
                tracks.size() > 1 ? List.of(say("place.drawn-tracks-apart")) : List.of(),
                tracks,
                List.of(),
                new FigureProvenance(
                    People.series(List.of()),
                    "",
                    say("place.course-of-no-model"),
                    edition.words(),
                    edition.date(),
                    false)));
  }

  private static Set<Clock> clocks(PatientCase patientCase) {
    Set<Clock> clocks = new TreeSet<>();
    patientCase.entered().forEach(one -> one.clock().ifPresent(clocks::add));
    patientCase.course().origins().entrySet().stream()
        .filter(origin -> origin.getValue() == 0)
        .map(Map.Entry::getKey)
        .forEach(clocks::add);
    return clocks;
  }

  private static List<Timeline.Reached> reached(PatientCase patientCase, Clock clock) {
    return patientCase.reached().stream()
        .filter(one -> one.clock().equals(Optional.of(clock)))
        .sorted(Comparator.comparingDouble(Reached::value))
        .map(one -> new Timeline.Reached(one.milestone().within(), one.value()))
        .toList();
  }
}
