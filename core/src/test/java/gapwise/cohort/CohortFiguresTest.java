package gapwise.cohort;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Proposals held against invented bases of which the truth is known. The limits are a little worse
 * than what was measured; docs/methods/overlapping-cohorts.md has the figures.
 */
class CohortFiguresTest {
  @ParameterizedTest
  @CsvSource({"1, 160", "2, 160", "3, 160", "4, 800"})
  void plantedPairsAreFoundAndStrangersLeftAlone(long seed, int size) {
    InventedCohorts base = InventedCohorts.of(seed, 2, size);
    OverlapSearch search = new OverlapSearch();
    base.studies.forEach(search::add);
    List<Proposal> proposals = search.find().proposals();
    CohortFigures figures = CohortFigures.of(base, proposals);
    assertEquals(28, figures.planted);
    assertTrue(figures.found >= 27, "missed " + figures.missed);
    assertTrue(figures.exactly >= 25, "found otherwise " + figures.otherwise);
    assertTrue(figures.falseAlarms.size() <= 1, "false alarms " + figures.falseAlarms);
    assertTrue(figures.doubts <= 10 + size / 8, "doubts " + figures.doubts);
  }
}
