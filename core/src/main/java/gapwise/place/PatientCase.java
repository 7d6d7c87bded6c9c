package gapwise.place;

import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Method;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * One case as a person enters it. It lives as long as its answer and is never stored.
 *
 * @param method how it was treated; empty where not said
 * @param defectLengthCentimetres missing bone, above 0 to 45 (longer than an adult femur)
 * @param bone the bone; empty where not said
 * @param segment AO/OTA code of the segment; empty where not said
 * @param infection infection at the start
 * @param entered milestones given by themselves, each once on one clock
 * @param course phases one after another
 */
public record PatientCase(
    Optional<Method> method,
    OptionalDouble defectLengthCentimetres,
    Optional<Bone> bone,
    Optional<String> segment,
    Infection infection,
    List<Reached> entered,
    Course course) {
  /** Longer than an adult femur, so no defect. */
  public static final double LONGEST_CENTIMETRES = 45;

  /** Infection of the case. */
  public enum Infection {
    UNSAID,
    NONE,
    PAST,
    ACTIVE
  }

  public PatientCase {
    Objects.requireNonNull(method, "method");
    Objects.requireNonNull(bone, "bone");
    Objects.requireNonNull(segment, "segment");
    Objects.requireNonNull(infection, "infection");
    entered = List.copyOf(entered);
    Objects.requireNonNull(course, "course");
    if (defectLengthCentimetres.isPresent()) {
      double length = defectLengthCentimetres.getAsDouble();
      if (!(length > 0 && length <= LONGEST_CENTIMETRES)) {
        throw wrong("length", "out-of-range", "found " + length + "; expected above 0 up to 45 cm");
      }
    }
    Set<Milestone> once = new HashSet<>();
    for (Reached one : entered) {
      if (!once.add(one.milestone())) {
        throw wrong(
            one.milestone().code(), "given-twice", one.milestone().label() + " is given twice");
      }
    }
  }

  private static WrongInputException wrong(String where, String code, String message) {
    return new WrongInputException(List.of(new Problem(where, code, message)));
  }

  /**
   * All milestones with their times, those entered first; one that follows from the phases on the
   * clock of one entered gives way to it.
   */
  public List<Reached> reached() {
    List<Reached> all = new ArrayList<>(entered);
    for (Reached derived : course.reached()) {
      if (entered.stream().noneMatch(own -> sameClock(own, derived))) {
        all.add(derived);
      }
    }
    return List.copyOf(all);
  }

  /** Where an entered time and the phases disagree by more than a tenth of a month. */
  public List<Problem> contradictions() {
    List<Problem> found = new ArrayList<>();
    for (Reached derived : course.reached()) {
      entered.stream()
          .filter(own -> sameClock(own, derived))
          .filter(own -> Math.abs(own.value() - derived.value()) > 0.1)
          .map(own -> CaseWords.contradiction(own, derived))
          .forEach(found::add);
    }
    return List.copyOf(found);
  }

  private static boolean sameClock(Reached a, Reached b) {
    return a.milestone() == b.milestone() && a.clock().equals(b.clock());
  }
}
