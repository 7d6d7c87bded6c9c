package gapwise.analysis.multiverse;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.synthesis.multiverse.ChoiceMove;
import gapwise.synthesis.multiverse.Multiverse;
import gapwise.synthesis.multiverse.SideShares;
import gapwise.synthesis.multiverse.Sides;
import gapwise.synthesis.multiverse.Spread;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** A multiverse in one sentence of a few clauses. */
final class MultiverseSentence {
  /** Enough for a person; all digits stand in the numbers. */
  private static final MathContext DIGITS = new MathContext(3);

  private MultiverseSentence() {}

  /**
   * What the analyses found.
   *
   * @param about what of a regression they tell; empty for a pooled value
   * @param shown their values; empty if there are none
   * @param sides of the threshold, if one is asked
   */
  record Told(
      Optional<MultiverseResult.About> about, Optional<Spread> shown, Optional<Sides> sides) {}

  static String of(
      Multiverse multiverse,
      Told told,
      List<ChoiceMove> moves,
      List<MultiverseResult.StudyMoved> studies) {
    String count = String.valueOf(multiverse.analyses().size());
    Optional<String> what = told.about().map(MultiverseSentence::what);
    if (told.shown().isEmpty()) {
      return what.isEmpty()
          ? say("analysis.multiverse-without-value", Map.of("analyses", count))
          : say("analysis.multiverse-tells-nothing", Map.of("analyses", count, "what", what.get()));
    }
    List<String> clauses = new ArrayList<>();
    clauses.add(range(told.shown().get(), what.orElse(say("analysis.pooled-value"))));
    told.sides().ifPresent(one -> clauses.add(side(one, multiverse)));
    Optional<ChoiceMove> choice = biggest(moves);
    choice.ifPresent(
        move ->
            clauses.add(say("analysis.multiverse-choice", Map.of("choice", move.choice().name()))));
    farthest(studies)
        .ifPresent(
            study ->
                clauses.add(
                    say(
                        choice.isPresent()
                            ? "analysis.multiverse-study-too"
                            : "analysis.multiverse-study",
                        Map.of("study", study))));
    return say("analysis.multiverse", Map.of("clauses", String.join("; ", clauses)));
  }

  /** What of a regression is told, in words. */
  private static String what(MultiverseResult.About about) {
    if (about.term().isPresent()) {
      return say("analysis.coefficient-of", Map.of("term", about.term().get()));
    }
    String at = values(about.at().orElseThrow());
    return about.against().isEmpty()
        ? say("analysis.mean-at", Map.of("values", at))
        : say(
            "analysis.mean-at-less-mean-at",
            Map.of("values", at, "others", values(about.against().get())));
  }

  private static String values(Map<String, JsonNode> values) {
    return values.entrySet().stream()
        .map(one -> one.getKey() + " " + told(one.getValue()))
        .collect(Collectors.joining(", "));
  }

  private static String told(JsonNode value) {
    return value.isNumber() ? digits(value.asDouble()) : value.asText();
  }

  private static String range(Spread spread, String what) {
    return say(
        "analysis.multiverse-range",
        Map.of(
            "what",
            what,
            "analyses",
            String.valueOf(spread.count()),
            "least",
            digits(spread.minimum()),
            "most",
            digits(spread.maximum()),
            "middle",
            digits(spread.median())));
  }

  private static String side(Sides s, Multiverse multiverse) {
    String value = digits(s.threshold());
    boolean families = !multiverse.analyses().isEmpty() && multiverse.families() > 1;
    if (families && s.below() < s.analyses() && s.above() < s.analyses()) {
      SideShares shares = multiverse.sharesAgainst(s.threshold());
      return say(
          "analysis.multiverse-side-open-of-families",
          Map.of(
              "value",
              value,
              "below",
              Math.round(100 * shares.below()),
              "above",
              Math.round(100 * shares.above()),
              "including",
              Math.round(100 * shares.intervalsIncluding())));
    }
    if (s.below() == s.analyses() || s.above() == s.analyses()) {
      return say(
          s.below() > 0 ? "analysis.multiverse-below" : "analysis.multiverse-above",
          Map.of("value", value, "intervals", intervals(s)));
    }
    return say(
        "analysis.multiverse-side-open",
        Map.of(
            "value",
            value,
            "below",
            String.valueOf(s.below()),
            "above",
            String.valueOf(s.above()),
            "intervals",
            intervals(s)));
  }

  private static String intervals(Sides s) {
    int including = s.intervalsIncluding();
    if (including == 0) {
      return say("analysis.no-interval-includes");
    }
    if (including == s.analyses()) {
      return say("analysis.every-interval-includes");
    }
    return including == 1
        ? say("analysis.one-interval-includes")
        : say("analysis.intervals-include", Map.of("intervals", String.valueOf(including)));
  }

  /** The choice, other than that of a study to leave out, whose levels lie farthest apart. */
  private static Optional<ChoiceMove> biggest(List<ChoiceMove> moves) {
    return moves.stream()
        .filter(move -> !move.choice().name().equals(MultiverseChoices.LEAVE_ONE_OUT))
        .filter(move -> move.share().isPresent() && move.range().orElse(0) > 0)
        .max(Comparator.comparingDouble(move -> move.range().getAsDouble()));
  }

  private static Optional<String> farthest(List<MultiverseResult.StudyMoved> studies) {
    return studies.stream()
        .filter(study -> Math.abs(study.shift().orElse(0)) > 0)
        .max(Comparator.comparingDouble(study -> Math.abs(study.shift().getAsDouble())))
        .map(MultiverseResult.StudyMoved::study);
  }

  private static String digits(double value) {
    return new BigDecimal(value).round(DIGITS).stripTrailingZeros().toPlainString();
  }
}
