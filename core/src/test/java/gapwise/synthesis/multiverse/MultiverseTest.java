package gapwise.synthesis.multiverse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** Two choices of two and three levels, whose pooled values are given, so that all is by hand. */
class MultiverseTest {
  private static final List<Choice> CHOICES =
      List.of(
          new Choice("model", List.of("common", "random")),
          new Choice("rows", List.of("all", "sound", "large")));

  private static AnalysisFinding value(double estimate) {
    return new AnalysisFinding.Estimated(
        estimate,
        estimate - 1,
        estimate + 1,
        Math.exp(estimate),
        Math.exp(estimate - 1),
        Math.exp(estimate + 1),
        5,
        OptionalDouble.empty());
  }

  private static Multiverse.Analysis analysis(int model, int rows, AnalysisFinding finding) {
    return new Multiverse.Analysis("log", Settings.none(2).with(0, model).with(1, rows), finding);
  }

  /** Values 0, 1, 2 under a common effect, 10, 11, 12 under random ones, by rows. */
  private static Multiverse table() {
    List<Multiverse.Analysis> analyses = new ArrayList<>();
    for (int model = 0; model < 2; model++) {
      for (int rows = 0; rows < 3; rows++) {
        analyses.add(analysis(model, rows, value(10 * model + rows)));
      }
    }
    return new Multiverse(CHOICES, analyses);
  }

  @Test
  void sharesOfABalancedTableAreThoseOfItsAnalysisOfVariance() {
    // Fisher, Statistical Methods for Research Workers, the two-way table without interaction:
    // between models 6 x 5^2 = 150, between rows 2 x (1 + 0 + 1) = 4, nothing left of 154.
    List<ChoiceMove> moves = table().moves(OptionalDouble.empty());
    assertEquals(150.0 / 154, moves.get(0).share().orElseThrow(), 1e-15);
    assertEquals(4.0 / 154, moves.get(1).share().orElseThrow(), 1e-15);
    assertEquals(10, moves.get(0).range().orElseThrow(), 1e-15);
    assertEquals(2, moves.get(1).range().orElseThrow(), 1e-15);
  }

  @Test
  void aChoiceWithoutMeaningThereIsNotCounted() {
    Multiverse multiverse =
        new Multiverse(
            CHOICES,
            List.of(
                analysis(0, Settings.NONE, value(50)),
                analysis(1, 0, value(1)),
                analysis(1, 1, value(3))));
    ChoiceMove rows = multiverse.moves(OptionalDouble.empty()).get(1);
    assertEquals(2, rows.range().orElseThrow(), 1e-15);
    assertEquals(1, rows.share().orElseThrow(), 1e-15);
    assertEquals(0, rows.levels().get(2).analyses());
    assertEquals(OptionalDouble.empty(), rows.levels().get(2).mean());
  }

  @Test
  void equalValuesLeaveNoShare() {
    Multiverse equal =
        new Multiverse(
            CHOICES, List.of(analysis(0, 0, value(0.1 + 0.2)), analysis(1, 0, value(0.3))));
    assertEquals(OptionalDouble.empty(), equal.moves(OptionalDouble.empty()).get(0).share());
  }

  @Test
  void lowestAndHighestAreTheFirstOfSeveral() {
    Multiverse ties =
        new Multiverse(
            CHOICES,
            List.of(analysis(0, 0, value(2)), analysis(0, 1, value(2)), analysis(0, 2, value(2))));
    assertEquals(0, ties.lowest().settings().level(1));
    assertEquals(0, ties.highest().settings().level(1));
    assertEquals(0, table().lowest().settings().level(0));
    assertEquals(2, table().highest().settings().level(1));
  }

  @Test
  void valuesOfSeveralScalesAreComparedAsPeopleReadThem() {
    // 0.9 as a log is read as 2.46; 2 as it stands is less.
    Multiverse mixed =
        new Multiverse(
            CHOICES,
            List.of(
                analysis(0, 0, value(0.9)),
                new Multiverse.Analysis(
                    "raw",
                    Settings.none(2).with(0, 1),
                    new AnalysisFinding.Estimated(2, 1, 3, 2, 1, 3, 5, OptionalDouble.empty()))));
    assertTrue(mixed.onlyShownCompares());
    assertEquals("log", mixed.highest().scale());
    assertFalse(table().onlyShownCompares());
    assertEquals(List.of("log", "raw"), List.copyOf(mixed.byScale().keySet()));
  }

  @Test
  void analysesWithoutAValueAreCountedByTheirReason() {
    Multiverse some =
        new Multiverse(
            CHOICES,
            List.of(
                analysis(0, 0, new AnalysisFinding.NotEstimated("no-studies")),
                analysis(0, 1, value(1)),
                analysis(0, 2, new AnalysisFinding.NotEstimated("no-studies")),
                analysis(1, 0, new AnalysisFinding.NotEstimated("zero-variance"))));
    assertEquals(Map.of("no-studies", 2, "zero-variance", 1), some.notEstimated());
    assertEquals(1, some.estimated().size());
    assertEquals(OptionalDouble.empty(), some.median(0, 1));
  }

  @Test
  void withoutAValueThereIsNoLowest() {
    Multiverse none =
        new Multiverse(
            CHOICES, List.of(analysis(0, 0, new AnalysisFinding.NotEstimated("no-studies"))));
    assertThrows(IllegalStateException.class, none::lowest);
  }

  @Test
  void repeatedResultsAreOneDifferentResult() {
    Multiverse repeated =
        new Multiverse(
            CHOICES,
            List.of(analysis(0, 0, value(1)), analysis(0, 1, value(1)), analysis(0, 2, value(2))));
    assertEquals(2, repeated.different());
  }

  @Test
  void theMiddleOfALevelIsThatOfItsValues() {
    assertEquals(11, table().median(0, 1).orElseThrow(), 1e-15);
    assertEquals(7, table().median(1, 2).orElseThrow(), 1e-15);
  }

  @Test
  void sidesOfAThresholdAreCountedAsPeopleReadThem() {
    // Read as ratios: e^0 = 1 equals 1; the intervals e^-1 to e^1 and e^0 to e^2 include it.
    Sides sides = table().against(1);
    assertEquals(new Sides(1, 6, 0, 5, 0, 4), sides);
    assertEquals(2, sides.intervalsIncluding());
    ChoiceMove model = table().moves(OptionalDouble.of(1)).get(0);
    assertEquals(OptionalInt.of(2), model.levels().get(0).including());
    assertEquals(OptionalInt.of(0), model.levels().get(1).including());
  }

  @Test
  void everyApproachRunsOnEverySubsetInOrder() {
    record Counting(String scale) implements Approach {
      @Override
      public List<Settings> ways() {
        return List.of(Settings.none(2).with(0, 0), Settings.none(2).with(0, 1));
      }

      @Override
      public List<AnalysisFinding> findings(Subset subset) {
        return List.of(value(subset.rows().size()), value(-subset.rows().size()));
      }
    }
    List<Subset> subsets =
        List.of(
            new Subset(Settings.none(2).with(1, 0), List.of(0, 1, 2)),
            new Subset(Settings.none(2).with(1, 2), List.of(4)));
    Multiverse all =
        Multiverse.of(CHOICES, List.of(new Counting("log"), new Counting("raw")), subsets);
    assertEquals(8, all.analyses().size());
    assertEquals(analysis(1, 2, value(-1)), all.analyses().get(3));
    assertEquals("raw", all.analyses().get(4).scale());
  }

  @Test
  void aSubsetIsNarrowedToWhatBothHold() {
    BitSet odd = new BitSet();
    odd.set(1);
    odd.set(3);
    Subset all = new Subset(Settings.none(1), List.of(3, 0, 2));
    assertEquals(List.of(0, 2, 3), all.rows());
    assertEquals(List.of(3), all.narrowed(Settings.none(1), odd).rows());
  }
}
