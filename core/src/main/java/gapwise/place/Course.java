package gapwise.place;

import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Phase;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Phases of a case one after another. What a phase is tells where clocks start: the frame of the
 * reconstruction goes on with the first phase in it and comes off with the last; a temporary frame
 * ends with the operation; the time between stages runs from the first stage to the graft. When
 * docking came cannot be told from phases, since not all that is distracted docks.
 *
 * @param start what the beginning of the first phase is, where a person says so
 * @param stays in the order in which they were lived through
 */
public record Course(Optional<Clock> start, List<Stay> stays) {
  /** No phase at all. */
  public static final Course NONE = new Course(Optional.empty(), List.of());

  public Course {
    Objects.requireNonNull(start, "start");
    stays = List.copyOf(stays);
    new Origins(start, stays).check();
  }

  /** Months from the beginning of the first phase to the end of the last. */
  public double totalMonths() {
    return monthsBefore(stays.size());
  }

  /** Months from the beginning to the beginning of a phase. */
  public double monthsBefore(int place) {
    return stays.subList(0, place).stream().mapToDouble(Stay::months).sum();
  }

  /** Clocks that start within the course, with the months from its beginning until they do. */
  public Map<Clock, Double> origins() {
    return Collections.unmodifiableMap(new Origins(start, stays).found());
  }

  /**
   * The milestones that follow from the phases, each on every clock that starts before it. The
   * months of phases after the frame never count as months in it, nor the other way round.
   */
  public List<Reached> reached() {
    List<Reached> reached = new ArrayList<>();
    Map<Clock, Double> origins = origins();
    add(reached, Milestone.PARTIAL, startOf(Phase.PARTIAL_WEIGHT_BEARING), origins);
    add(reached, Milestone.IN_SUPPORT, startOf(Phase.FULL_IN_SUPPORT), origins);
    add(reached, Milestone.UNSUPPORTED, startOf(Phase.UNSUPPORTED), origins);
    if (!stays.isEmpty()) {
      add(reached, Milestone.END, Optional.of(totalMonths()), origins);
    }
    Double on = origins.get(Clock.FRAME_ON);
    Double off = origins.get(Clock.FRAME_REMOVAL);
    if (on != null && off != null && off > on) {
      reached.add(0, from(Milestone.FRAME_OFF, off - on, Clock.FRAME_ON));
    }
    return List.copyOf(reached);
  }

  private Optional<Double> startOf(Phase phase) {
    for (int i = 0; i < stays.size(); i++) {
      if (stays.get(i).phase() == phase) {
        return Optional.of(monthsBefore(i));
      }
    }
    return Optional.empty();
  }

  private static void add(
      List<Reached> reached,
      Milestone milestone,
      Optional<Double> months,
      Map<Clock, Double> origins) {
    months.ifPresent(
        at ->
            origins.forEach(
                (clock, origin) -> {
                  if (at > origin) {
                    reached.add(from(milestone, at - origin, clock));
                  }
                }));
  }

  private static Reached from(Milestone milestone, double months, Clock clock) {
    return new Reached(milestone, months, Optional.of(clock), Optional.empty(), true);
  }

  /** Finds the clocks of a course, and what contradicts itself in it. */
  private record Origins(Optional<Clock> start, List<Stay> stays) {

    void check() {
      Problems problems = new Problems();
      frames(problems);
      Map<Clock, Double> found = found();
      start
          .filter(clock -> found.getOrDefault(clock, 0.0) > 0)
          .ifPresent(
              clock ->
                  problems.add(
                      "start",
                      "clock-starts-twice",
                      "the course is said to start with "
                          + clock.label()
                          + ", yet by its phases that comes later; take another start or leave it"
                          + " out"));
      boolean temporary = !stays.isEmpty() && stays.get(0).phase() == Phase.TEMPORARY_FRAME;
      if (temporary && start.equals(Optional.of(Clock.FRAME_ON))) {
        problems.add(
            "start",
            "temporary-frame",
            "papers count from the frame of the reconstruction, not from a temporary one before"
                + " the operation; take another start or leave it out");
      }
      if (!problems.isEmpty()) {
        throw new WrongInputException(problems.list());
      }
    }

    /** Months in a frame could not be told from a frame that is on twice. */
    private void frames(Problems problems) {
      int runs = 0;
      for (int i = 0; i < stays.size(); i++) {
        runs += stays.get(i).inFrame() && (i == 0 || !stays.get(i - 1).inFrame()) ? 1 : 0;
      }
      if (runs > 1) {
        problems.addAll(
            List.of(
                new Problem(
                    "phase",
                    "frame-on-twice",
                    "the phases in the frame are parted by others; put them one after another, a"
                        + " frame before the operation as a temporary one")));
      }
    }

    Map<Clock, Double> found() {
      Map<Clock, Double> found = new EnumMap<>(Clock.class);
      double months = 0;
      boolean stages = stays.stream().anyMatch(stay -> stay.phase() == Phase.BETWEEN_STAGES);
      for (Stay stay : stays) {
        double end = months + stay.months();
        switch (stay.phase()) {
          case TEMPORARY_FRAME ->
              found.put(stages ? Clock.FIRST_STAGE : Clock.DEFINITIVE_OPERATION, end);
          case BETWEEN_STAGES -> {
            found.putIfAbsent(Clock.FIRST_STAGE, months);
            found.put(Clock.GRAFTING, end);
          }
          default -> {
            // The other phases start and stop no clock of their own but the frame's.
          }
        }
        if (stay.inFrame()) {
          found.putIfAbsent(Clock.FRAME_ON, months);
          found.put(Clock.FRAME_REMOVAL, end);
        }
        months = end;
      }
      start.ifPresent(clock -> found.putIfAbsent(clock, 0.0));
      return found;
    }
  }
}
