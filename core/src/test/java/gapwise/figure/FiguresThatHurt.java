package gapwise.figure;

import gapwise.figure.bubble.InventedBubbles;
import gapwise.figure.curve.InventedCurves;
import gapwise.figure.flow.InventedFlows;
import gapwise.figure.forest.InventedForests;
import gapwise.figure.funnel.InventedFunnels;
import gapwise.figure.network.InventedNetworks;
import gapwise.figure.plane.InventedPlanes;
import gapwise.figure.ranks.InventedRanks;
import gapwise.figure.timeline.InventedTimelines;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Invented figures of each kind in the states that break a layout: few and many rows, all of one
 * value, none at all, the longest names.
 */
public final class FiguresThatHurt {
  private FiguresThatHurt() {}

  /** By kind and state. */
  public static Map<String, Figure> byName() {
    Map<String, Figure> figures = new LinkedHashMap<>();
    EveryFigure.byName().forEach((name, figure) -> figures.put("usual " + name, figure));
    figures.put("forest of one series", InventedForests.oneSeriesAndAnEmptyBlock());
    figures.put("forest of two series, all united", InventedForests.allUnited(2));
    figures.put("forest of twelve series, all united", InventedForests.allUnited(12));
    figures.put("forest of ratios", InventedForests.ratios());
    figures.put("forest of months without spreads", InventedForests.meansWithoutASpread());
    figures.put("forest of 40 series in three methods", InventedForests.many(40, 3));
    figures.put("forest of 40 series in one method", InventedForests.many(40, 1));
    figures.put("forest of nine series in four methods", InventedForests.many(9, 4));
    figures.put("forest of hostile words", InventedForests.hostileWords());
    figures.put("bubble of all united", InventedBubbles.allUnited());
    figures.put("bubble of one series", InventedBubbles.oneSeries());
    figures.put("bubble of months by many methods", InventedBubbles.monthsByManyMethods());
    figures.put("funnel of proportions", InventedFunnels.proportions());
    figures.put("funnel of one series", InventedFunnels.alone());
    figures.put("funnel of none", InventedFunnels.empty());
    figures.put("curves that fall", InventedCurves.figure(false));
    figures.put("network of two", InventedNetworks.complete(2));
    figures.put("network of eight", InventedNetworks.complete(8));
    figures.put("timeline of four clocks", InventedTimelines.fourClocks());
    figures.put("plane of six methods with long names", InventedPlanes.plane(6, List.of()));
    figures.put("plane of one dominated method", InventedPlanes.dominated());
    figures.put("acceptability of two", InventedPlanes.acceptability(2, List.of()));
    figures.put("acceptability of seven", InventedPlanes.acceptability(7, List.of()));
    figures.put("flow with much to tell", InventedFlows.crowded());
    figures.put("ranks of two", InventedRanks.of(2, List.of()));
    figures.put("ranks of eight", InventedRanks.of(8, List.of()));
    return figures;
  }
}
