package gapwise.evidence;

import gapwise.evidence.vocabulary.Method;
import java.util.List;
import java.util.OptionalInt;

/** All groups of a study as one, for a value that a paper gives for all of them together. */
public final class AllGroups {
  /** The id of no group; templates keep it for all groups together. */
  public static final String ID = "ALL";

  private static final String LABEL = "all groups together";

  private AllGroups() {}

  /**
   * The groups as one: their common method, or {@link Method#SEVERAL}; what the paper says of all
   * patients; and as many patients as the groups have, where the paper does not say.
   */
  public static Arm of(Study study) {
    List<Method> methods =
        study.arms().stream().map(arm -> arm.method().principal()).distinct().toList();
    MethodUsed method = MethodUsed.of(methods.size() == 1 ? methods.get(0) : Method.SEVERAL);
    return Arm.with(ID, method).label(LABEL).baseline(baseline(study)).build();
  }

  /** Whether an arm stands for all groups of its study. */
  public static boolean is(Study study, Arm arm) {
    return arm.id().equals(ID) && study.arm(ID).isEmpty();
  }

  private static Baseline baseline(Study study) {
    Baseline all = study.whole();
    List<OptionalInt> patients =
        study.arms().stream().map(arm -> arm.baseline().patients()).toList();
    return all.patients().isPresent() || patients.stream().anyMatch(OptionalInt::isEmpty)
        ? all
        : all.but().patients(patients.stream().mapToInt(OptionalInt::getAsInt).sum()).build();
  }
}
