package gapwise.exchange;

/** The columns by which rows of different sheets belong together. */
final class Keys {
  static final Field<String> STUDY =
      Field.id("study_id", "Study", "Short name of the study, the same on every sheet.")
          .asRequired()
          .like("example2015");
  static final Field<String> ARM =
      Field.id(
              "arm_id",
              "Arm",
              "Short name of the group within the study. ALL is a value that the paper gives for all"
                  + " its groups together.")
          .asRequired()
          .like("A");

  /** Stands for all arms together, so no arm may have this name. */
  static final String ALL = "ALL";

  private Keys() {}
}
