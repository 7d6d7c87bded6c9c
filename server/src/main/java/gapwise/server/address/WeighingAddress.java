package gapwise.server.address;

import gapwise.decision.choice.Range;
import gapwise.decision.choice.Unknowns;
import gapwise.decision.choice.WeighingAsked;
import gapwise.decision.option.Aspect;
import gapwise.decision.weighing.Wishes;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Nearest;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.TreeMap;

/**
 * Reads how options are to be weighed, beside what {@link OptionAddress} reads: {@code weigh} (an
 * outcome by its code, once for each), {@code place-OUTCOME} (1 for the most important), {@code
 * least-OUTCOME} and {@code most-OUTCOME} (parts of 100 of the decision), {@code worst-OUTCOME} and
 * {@code best-OUTCOME} (the range that a weight speaks of: of 100, months, operations).
 */
public final class WeighingAddress {
  public static final String WEIGH = "weigh";
  public static final String PLACE = "place-";
  public static final String LEAST = "least-";
  public static final String MOST = "most-";
  public static final String WORST = "worst-";
  public static final String BEST = "best-";

  private static final double HUNDRED = 100;

  private final Address address;
  private final Problems problems = new Problems();

  private WeighingAddress(Address address) {
    this.address = address;
  }

  /** Whether a name speaks of weighing and not of the situation. */
  public static boolean isOwn(String name) {
    return List.of(WEIGH, ChoiceAddress.ASKED, ChoiceAddress.UNKNOWN, ChoiceAddress.SEED)
            .contains(name)
        || List.of(PLACE, LEAST, MOST, WORST, BEST).stream().anyMatch(name::startsWith);
  }

  /** The address of the situation alone. */
  public static Address situation(Address address) {
    return address.without(
        address.parameters().keySet().stream().filter(WeighingAddress::isOwn).toList());
  }

  /**
   * How the table is to be weighed.
   *
   * @throws WrongInputException with everything that is wrong in it
   */
  public static WeighingAsked read(Address address) {
    return new WeighingAddress(address).asked();
  }

  private WeighingAsked asked() {
    List<Aspect> aspects = aspects();
    Map<Aspect, Range> ranges = new EnumMap<>(Aspect.class);
    Map<String, Double> atLeast = new TreeMap<>();
    Map<String, Double> atMost = new TreeMap<>();
    for (Aspect aspect : aspects) {
      range(aspect, ranges);
      limit(LEAST, aspect, atLeast);
      limit(MOST, aspect, atMost);
    }
    Wishes wishes = new Wishes(order(aspects), atLeast, atMost);
    Unknowns unknowns = ChoiceAddress.unknowns(address, problems);
    long seed = ChoiceAddress.seed(address, problems);
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return new WeighingAsked(aspects, ranges, wishes, unknowns, seed);
  }

  private List<Aspect> aspects() {
    List<Aspect> aspects = new ArrayList<>();
    for (String code : address.all(WEIGH)) {
      Coded.parse(Aspect.class, code)
          .ifPresentOrElse(
              aspects::add,
              () ->
                  problems.add(
                      WEIGH,
                      "unknown-code",
                      "'" + code + "'; " + Nearest.expected(code, Coded.codes(Aspect.class))));
    }
    if (address.all(WEIGH).isEmpty()) {
      problems.add(
          WEIGH, "nothing-to-weigh", "no outcome is weighed; take one or more that matter");
    }
    return aspects.stream().distinct().sorted().toList();
  }

  private void range(Aspect aspect, Map<Aspect, Range> ranges) {
    OptionalDouble worst = number(WORST, aspect, "the worst of its range, such as 50");
    OptionalDouble best = number(BEST, aspect, "the best of its range, such as 100");
    if (worst.isPresent() != best.isPresent()) {
      problems.add(
          (worst.isPresent() ? BEST : WORST) + aspect.code(),
          "half-a-range",
          aspect.label() + " has one end of a range only; enter its worst and its best");
    } else if (worst.isPresent() && worst.getAsDouble() == best.getAsDouble()) {
      problems.add(
          WORST + aspect.code(),
          "no-range",
          aspect.label() + " has the same worst and best; a weight speaks of the way between them");
    } else if (worst.isPresent()) {
      ranges.put(aspect, new Range(worst.getAsDouble(), best.getAsDouble()));
    }
  }

  private void limit(String name, Aspect aspect, Map<String, Double> limits) {
    number(name, aspect, "parts of 100 of the decision, such as 20 for a fifth")
        .ifPresent(parts -> limits.put(aspect.code(), parts / HUNDRED));
  }

  private OptionalDouble number(String name, Aspect aspect, String expected) {
    return TypedNumber.of(address, name + aspect.code(), expected, problems);
  }

  /** Outcomes with a place, the most important first. */
  private List<String> order(List<Aspect> aspects) {
    Map<Long, Aspect> order = new TreeMap<>();
    for (Aspect aspect : aspects) {
      OptionalLong place =
          TypedNumber.whole(
              address, PLACE + aspect.code(), "a place, 1 for the most important", problems);
      if (place.isEmpty()) {
        continue;
      }
      Aspect other = order.putIfAbsent(place.getAsLong(), aspect);
      if (other != null) {
        problems.add(
            PLACE + aspect.code(),
            "same-place-twice",
            other.label()
                + " and "
                + aspect.label()
                + " both have place "
                + place.getAsLong()
                + "; give each its own, or one of them none");
      }
    }
    if (order.size() == 1 && problems.isEmpty()) {
      Aspect only = order.values().iterator().next();
      problems.add(
          PLACE + only.code(),
          "one-place-alone",
          only.label()
              + " alone has a place, and an order takes two; give the others places, or say at"
              + " least how much it counts");
    }
    return order.values().stream().map(Aspect::code).toList();
  }
}
