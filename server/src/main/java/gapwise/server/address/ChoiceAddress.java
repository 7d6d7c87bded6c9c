package gapwise.server.address;

import gapwise.decision.choice.Unknowns;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Nearest;
import gapwise.problem.Problems;

/**
 * What addresses of weighing and of costs have in common: {@code asked=yes} asks for a result,
 * {@code unknown} says what becomes of what is not known, {@code seed} where draws begin.
 */
public final class ChoiceAddress {
  public static final String ASKED = "asked";
  public static final String YES = "yes";
  public static final String UNKNOWN = "unknown";
  public static final String SEED = "seed";

  private static final long USUAL_SEED = 1;

  private ChoiceAddress() {}

  /** Whether a result is asked for. */
  public static boolean isAsked(Address address) {
    return address.has(ASKED, YES);
  }

  /** What becomes of what is not known: anything within its range, unless said. */
  static Unknowns unknowns(Address address, Problems problems) {
    String code = address.first(UNKNOWN);
    if (code.isEmpty()) {
      return Unknowns.RANGE;
    }
    return Coded.parse(Unknowns.class, code)
        .orElseGet(
            () -> {
              problems.add(
                  UNKNOWN,
                  "unknown-code",
                  "'" + code + "'; " + Nearest.expected(code, Coded.codes(Unknowns.class)));
              return Unknowns.RANGE;
            });
  }

  /** Where draws begin: 1 unless said. */
  static long seed(Address address, Problems problems) {
    return TypedNumber.whole(address, SEED, "a number of up to 9 digits, such as 1", problems)
        .orElse(USUAL_SEED);
  }
}
