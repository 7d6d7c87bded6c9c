package gapwise.decision.cost;

/**
 * How patients fare after one method, from evidence.
 *
 * @param code of the method, unique in a comparison
 * @param label for people
 * @param kind whether the limb is kept or taken at the beginning
 * @param stages planned stages of treatment one after another, 1 to 6
 * @param monthsSeen months after which its shares were read; 0 where not told
 * @param draws what is uncertain of it
 */
public record MethodCourse(
    String code, String label, Kind kind, int stages, double monthsSeen, CourseDraws draws) {
  /** What is done at the beginning. */
  public enum Kind {
    /** The limb is rebuilt; some heal, some are amputated later. */
    RECONSTRUCTION,
    /** The limb is amputated at the beginning; treatment lasts until the patient walks. */
    AMPUTATION
  }

  /** More stages than any method plans; our choice. */
  private static final int MOST_STAGES = 6;

  public MethodCourse {
    if (code.isBlank() || label.isBlank()) {
      throw new IllegalArgumentException("a method needs a code and a label");
    }
    if (stages < 1 || stages > MOST_STAGES || !(monthsSeen >= 0)) {
      throw new IllegalArgumentException(
          code + ": no course of " + stages + " stages, seen at month " + monthsSeen);
    }
  }
}
