package gapwise.figure.drawing;

/** The colours of every figure: a ground, an ink, one accent for pooled values, bone for spans. */
public final class Ink {
  public static final String GROUND = "#FBFAF7";
  public static final String INK = "#1B2430";

  /** Second-rank text; at least 4.5:1 on ground and on bone. */
  public static final String SOFT = "#555E6B";

  public static final String HAIR = "#D9D5CB";
  public static final String GRID = "#E6E2D9";
  public static final String BONE = "#E7DFCC";
  public static final String BONE_EDGE = "#8A7F66";

  /** Interval bars; at least 3:1 on ground, as a mark must be. */
  public static final String BONE_GREY = "#958A70";

  public static final String ACCENT = "#B4432B";

  private Ink() {}
}
