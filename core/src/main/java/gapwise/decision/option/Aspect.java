package gapwise.decision.option;

import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What matters in the choice of a method, gains and harms alike, in a fixed order. Each is answered
 * by one outcome of the vocabulary, the same for all methods; where papers count it in several ways
 * the way of most groups is taken, unless another is asked for.
 */
public enum Aspect implements Coded {
  UNION(
      "Bone joined",
      List.of("primary-union", "union-without-further-grafting", "union", "final-union"),
      OptionalDouble.of(0.10)),
  INFECTION(
      "Infection afterwards",
      List.of("infection-recurrence", "postoperative-deep-infection", "deep-infection"),
      OptionalDouble.of(0.10)),
  LATER_AMPUTATION("Later amputation", List.of("secondary-amputation"), OptionalDouble.of(0.05)),
  UNPLANNED_OPERATION(
      "Another, unplanned operation", List.of("unplanned-reoperation"), OptionalDouble.of(0.10)),
  OPERATIONS(
      "Operations in all",
      List.of("total-operations", "unplanned-operations"),
      OptionalDouble.of(1)),
  FRAME_TIME("Time in a frame", List.of("external-fixation-time"), OptionalDouble.of(1)),
  FULL_WEIGHT(
      "Time to full weight",
      List.of(
          "time-to-full-weight-bearing",
          "time-to-unsupported-weight-bearing",
          "time-to-full-weight-bearing-in-support"),
      OptionalDouble.of(1)),
  DONOR_SITE(
      "Trouble where bone was taken", List.of("donor-site-morbidity"), OptionalDouble.of(0.10)),
  FUNCTION(
      "Good function",
      List.of("functional-result", "functional-result-other-criteria", "lefs", "sf36-physical"),
      OptionalDouble.empty()),
  WORK("Back at work", List.of("return-to-work"), OptionalDouble.of(0.10)),
  COST("Cost", List.of("cost"), OptionalDouble.empty());

  private static final Set<String> AMPUTATIONS =
      Set.of("primary-amputation", "secondary-amputation", "amputation");

  private final String label;
  private final List<String> outcomes;
  private final OptionalDouble matters;

  Aspect(String label, List<String> outcomes, OptionalDouble matters) {
    this.label = label;
    this.outcomes = outcomes;
    this.matters = matters;
  }

  @Override
  public String code() {
    return Coded.codeOf(this);
  }

  @Override
  public String label() {
    return label;
  }

  /**
   * The outcomes that can answer it, the one to take where as many groups report another first. A
   * limb that is free of infection can be infected anew, one that is infected again.
   *
   * @param infected whether the bone is infected, where that is asked
   */
  public List<Outcome> outcomes(Optional<YesOrNo> infected) {
    List<String> codes =
        this == INFECTION && infected.equals(Optional.of(YesOrNo.NO))
            ? List.of("deep-infection", "postoperative-deep-infection")
            : this == INFECTION && infected.equals(Optional.of(YesOrNo.YES))
                ? List.of("infection-recurrence", "postoperative-deep-infection")
                : outcomes;
    return codes.stream().map(Outcome.vocabulary()::get).toList();
  }

  /**
   * The difference that would matter to most, until a person names one: a share, months, or
   * operations (common practice, no source); empty where there is none in use.
   */
  public OptionalDouble usuallyMatters() {
    return matters;
  }

  /** Whether it can happen after a method: an amputated limb has no gap to join. */
  public boolean appliesTo(Method method) {
    boolean amputation = isAmputation(method);
    return switch (this) {
      case UNION, LATER_AMPUTATION, DONOR_SITE -> !amputation;
      case FRAME_TIME -> method.frame();
      default -> true;
    };
  }

  /** Whether a method gives the limb up. */
  public static boolean isAmputation(Method method) {
    return AMPUTATIONS.contains(method.code());
  }
}
