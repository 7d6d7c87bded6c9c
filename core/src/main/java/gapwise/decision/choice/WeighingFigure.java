package gapwise.decision.choice;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Edition;
import gapwise.decision.weighing.Standing;
import gapwise.figure.ranks.RankShares;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** How often each method takes each rank, drawn. */
public final class WeighingFigure {
  private WeighingFigure() {}

  /** The figure; empty where there are more methods than shades of ranks. */
  public static Optional<RankShares> of(WeighedMethods methods, Edition edition) {
    if (methods.methods().size() > RankShares.MOST_BARS) {
      return Optional.empty();
    }
    List<RankShares.Bar> bars = new ArrayList<>();
    for (int m = 0; m < methods.methods().size(); m++) {
      Standing standing = methods.weighed().standings().get(m);
      bars.add(
          new RankShares.Bar(
              ChoiceFigures.mark(methods.methods().get(m)),
              standing.ranks(),
              methods.weighed().error(Math.min(1, standing.first()))));
    }
    return Optional.of(
        new RankShares(
            say("choice.ranks-title"),
            sentences(methods),
            bars,
            cautions(),
            ChoiceFigures.provenance(
                methods.columns(),
                methods.methods(),
                say("choice.ranks-model", Map.of("draws", WeighedTable.DRAWS)),
                edition)));
  }

  /** The wishes and the ranges in sentences. */
  public static List<String> sentences(WeighedMethods methods) {
    return List.of(
        say(
            "choice.wishes",
            Map.of("wishes", String.join("; ", WishWords.wishes(methods.weighed())))),
        say("choice.ranges", Map.of("ranges", WishWords.ranges(methods))));
  }

  /** What must be known beside shares of ranks, wherever they stand. */
  public static List<String> cautions() {
    return List.of(
        say("choice.separate-groups"), say("choice.no-chance"), say("choice.conversation"));
  }
}
