package gapwise.synthesis.smallstudy;

/**
 * A way of looking for small-study effects. Each is one class, listed in {@link SmallStudyTests}.
 */
public interface SmallStudyTest {
  /** The word in a plan. */
  String name();

  /** What it finds, or why it is refused; never throws for valid data of any size. */
  AsymmetryFinding find(SmallStudyData data);
}
