package gapwise.figure.ranks;

import gapwise.figure.FigureProvenance;
import gapwise.figure.Reference;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.value.SeriesCount;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** Shares of ranks for tests. Every name and number in them is invented. */
public final class InventedRanks {
  private static final List<MethodMark> METHODS =
      List.of(
          new MethodMark("bone-transport", "Bone transport", "ring", "#2128D2"),
          new MethodMark("induced-membrane", "Induced membrane", "square", "#8A5A00"),
          new MethodMark(
              "vascularised-flap",
              "Vascularised fibular flap with a frame, then a nail, in two stages at one centre",
              "triangle",
              "#5B1E8C"),
          new MethodMark("acute-shortening", "Shorten, lengthen", "chevron", "#1E6FA8"),
          new MethodMark("allograft", "Structural allograft", "bar", "#7A3B12"),
          new MethodMark("metal-cage", "Metal cage", "barred-square", "#3F4A56"),
          new MethodMark("mixed", "Mixed salvage", "disc", "#5A5F66"),
          new MethodMark("amputation", "Amputation", "cross", "#5A5F66"));

  private InventedRanks() {}

  /** From two to eight alternatives, of which the last never comes first. */
  public static RankShares of(int alternatives, List<Reference> references) {
    List<RankShares.Bar> bars =
        IntStream.range(0, alternatives)
            .mapToObj(
                a ->
                    new RankShares.Bar(
                        METHODS.get(a), shares(a, alternatives), a == 1 ? 0 : 0.0031))
            .toList();
    return new RankShares(
        "Which comes first, under all wishes",
        List.of("Bone transport comes first in most draws. Invented numbers."),
        bars,
        List.of(
            "A share of draws is no chance of success: it says how many ways of weighing lead there."),
        new FigureProvenance(
                SeriesCount.of(14), "231 limbs", "weights drawn", "test", Optional.empty(), true)
            .citing(references));
  }

  private static List<Double> shares(int a, int alternatives) {
    double[] raw =
        IntStream.range(0, alternatives)
            .mapToDouble(
                rank ->
                    a == alternatives - 1 && rank == 0
                        ? 0
                        : Math.exp(-0.5 * Math.abs(rank - a * 0.8)))
            .toArray();
    double sum = DoubleStream.of(raw).sum();
    return DoubleStream.of(raw).map(share -> share / sum).boxed().toList();
  }
}
