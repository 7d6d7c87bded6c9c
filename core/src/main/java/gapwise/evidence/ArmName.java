package gapwise.evidence;

/** What a group of patients is called wherever it stands beside groups of other studies. */
public final class ArmName {
  private ArmName() {}

  /** First author and year, with the group where the study has several; unique in the study. */
  public static String of(Study study, Arm arm) {
    return of(study.citation().label(), study, arm);
  }

  /**
   * The same with another name of the study, such as one that tells it from a study of the same
   * first author and year.
   */
  public static String of(String name, Study study, Arm arm) {
    return study.arms().size() == 1 ? name : name + ", " + within(study, arm);
  }

  /**
   * Papers give two groups one name, such as that of the method: then the letter tells them apart.
   */
  private static String within(Study study, Arm arm) {
    if (arm.label().isEmpty()) {
      return arm.id();
    }
    long alike = study.arms().stream().filter(one -> one.label().equals(arm.label())).count();
    // All groups together carry a name that is none of theirs.
    return alike <= 1 ? arm.label().get() : arm.label().get() + " (" + arm.id() + ")";
  }
}
