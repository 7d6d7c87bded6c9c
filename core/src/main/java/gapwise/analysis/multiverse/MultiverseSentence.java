package gapwise.analysis.multiverse;

import gapwise.synthesis.multiverse.ChoiceMove;
import gapwise.synthesis.multiverse.Multiverse;
import gapwise.synthesis.multiverse.Sides;
import gapwise.synthesis.multiverse.Spread;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A multiverse in one sentence, or a few clauses of one. */
final class MultiverseSentence {
  /** Enough for a person; all digits stand in the numbers. */
  private static final MathContext DIGITS = new MathContext(3);

  private MultiverseSentence() {}

  static String of(
      Multiverse multiverse,
      Optional<Spread> shown,
      Optional<Sides> sides,
      List<ChoiceMove> moves,
      List<MultiverseResult.StudyMoved> studies) {
    if (shown.isEmpty()) {
      return "None of " + multiverse.analyses().size() + " analyses gives a pooled value.";
    }
    Spread spread = shown.get();
    StringBuilder text = new StringBuilder();
    text.append("Over ")
        .append(spread.count())
        .append(" analyses the pooled value goes from ")
        .append(digits(spread.minimum()))
        .append(" to ")
        .append(digits(spread.maximum()))
        .append(", with ")
        .append(digits(spread.median()))
        .append(" in the middle");
    sides.ifPresent(s -> text.append(side(s)));
    biggest(moves)
        .ifPresent(
            move ->
                text.append("; of the choices ")
                    .append(move.choice().name())
                    .append(" moves it most"));
    farthest(studies)
        .ifPresent(
            study -> text.append("; of the studies leaving out ").append(study).append(" does"));
    return text.append('.').toString();
  }

  private static String side(Sides s) {
    String value = digits(s.threshold());
    boolean oneSide = s.below() == s.analyses() || s.above() == s.analyses();
    String estimates =
        oneSide
            ? "; all lie " + (s.below() > 0 ? "below " : "above ") + value
            : "; the side of "
                + value
                + " hangs on the choices ("
                + s.below()
                + " below, "
                + s.above()
                + " above)";
    int including = s.intervalsIncluding();
    String intervals =
        including == 0
            ? ", and no interval includes it"
            : ", and "
                + (including == s.analyses()
                    ? "every interval includes it"
                    : including == 1
                        ? "1 interval includes it"
                        : including + " intervals include it");
    return estimates + intervals;
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
