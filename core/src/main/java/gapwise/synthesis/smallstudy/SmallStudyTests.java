package gapwise.synthesis.smallstudy;

import java.util.List;
import java.util.Optional;

/** Every test without settings of its own; a new one is one line here. */
public final class SmallStudyTests {
  private static final List<SmallStudyTest> ALL =
      List.of(new Egger(), new EggerRandom(), new Begg(), new Peters(), new Harbord());

  private SmallStudyTests() {}

  /** The test of a name. */
  public static Optional<SmallStudyTest> named(String name) {
    return ALL.stream().filter(test -> test.name().equals(name)).findFirst();
  }
}
