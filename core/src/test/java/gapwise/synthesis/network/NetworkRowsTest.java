package gapwise.synthesis.network;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class NetworkRowsTest {
  private static final double[] PARAMETERS = {0.7, -1.3, 2.9};

  private static NetworkStudy study(String one, String other, double variance) {
    return new NetworkStudy("study", List.of(one, other), List.of(0.5), List.of(List.of(variance)));
  }

  private static List<SparseRow> rows(List<NetworkStudy> studies) {
    TreatmentIndex index = TreatmentIndex.of(studies, "a");
    return NetworkRows.of(studies, index, SpanningForest.of(index.size(), studies, index))
        .orElseThrow()
        .design();
  }

  /** Ten thousand rows apart in memory were four times as slow to run through as these. */
  @Test
  void studiesOfTheSameTwoTreatmentsShareTheirRow() {
    List<NetworkStudy> studies = new ArrayList<>();
    String[] names = {"a", "b", "c", "d"};
    for (int i = 0; i < 60; i++) {
      studies.add(study(names[i % 4], names[(i + 1 + i % 3) % 4], 0.1 + i));
    }
    List<SparseRow> rows = rows(studies);
    for (int i = 0; i < studies.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (studies.get(i).treatments().equals(studies.get(j).treatments())) {
          assertSame(rows.get(i), rows.get(j));
        }
      }
    }
  }

  /** What one treatment is less another, that other is more than it. */
  @Test
  void aStudyToldTheOtherWayRoundHasTheOppositeRow() {
    List<SparseRow> rows =
        rows(
            List.of(
                study("a", "b", 0.1),
                study("b", "c", 0.2),
                study("c", "d", 0.3),
                study("a", "d", 0.9),
                study("d", "a", 0.9)));
    assertArrayEquals(rows.get(3).places(), rows.get(4).places());
    assertEquals(rows.get(3).at(PARAMETERS), -rows.get(4).at(PARAMETERS), 0);
    assertEquals(
        rows.get(3).at(PARAMETERS),
        rows.get(0).at(PARAMETERS) + rows.get(1).at(PARAMETERS) + rows.get(2).at(PARAMETERS),
        1e-15,
        "the way round the others");
  }
}
