package gapwise.paper.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.paper.Box;
import gapwise.paper.Drawn;
import gapwise.paper.Opened;
import gapwise.paper.Paper;
import gapwise.printed.Proposed.State;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Fields of an invented paper, against what was drawn. */
class PaperFieldsTest {
  @TempDir Path folder;

  private Box unitedBox = new Box(0, 0, 0, 0);

  private PaperFields paper(boolean unseen) throws IOException {
    try (Drawn drawn = new Drawn()) {
      if (unseen) {
        drawn.content().setRenderingMode(RenderingMode.NEITHER);
      }
      drawn.text(60, 50, 8, "Invented Sheets 2019;4(2):11\u201317");
      drawn.bold(60, 80, 16, "Two ways over an invented gap");
      drawn.text(60, 100, 9, "Mirle Hollowby, Anders Quell");
      drawn.text(
          60,
          140,
          9,
          "The gap measured 7.2 cm (SD 2.5, range 3\u201314). No group was drawn by lot.");
      drawn.text(
          60,
          152,
          9,
          "Later 26 of 32 limbs (81%) united. Patients came in the years 2001 to 2009.");
      drawn.bold(60, 200, 9, "Table 1. Outcomes");
      double[] middles = {280, 380};
      String[][] rows = {
        {"Outcome", "Bone transport, n = 20", "Allograft, n = 12"},
        {"Union, n (%)", "18 (90)", "8 (67)"},
        {"Refracture, n (%)", "2 (10)", "1 (8)"},
        {"Deep infection, n (%)", "4 (20)", "3 (25)"}
      };
      for (int i = 0; i < rows.length; i++) {
        drawn.text(60, 216 + 14 * i, 9, rows[i][0]);
        for (int j = 0; j < 2; j++) {
          Box box = drawn.middle(middles[j], 216 + 14 * i, 9, rows[i][j + 1]);
          unitedBox = rows[i][j + 1].equals("18 (90)") ? box : unitedBox;
        }
      }
      try (Paper paper = ((Opened) Paper.open(drawn.save(folder))).paper()) {
        return PaperFields.of(paper);
      }
    }
  }

  private static List<PaperField> of(PaperFields paper, String column, String value) {
    return paper.fields().stream()
        .filter(f -> f.field().value().column().equals(column))
        .filter(f -> f.field().value().text().equals(value))
        .toList();
  }

  @Test
  void everyFieldOfATableHasItsPageBoxAndWords() throws IOException {
    PaperFields paper = paper(false);
    PaperField united = of(paper, "events", "18").get(0);
    assertEquals(1, united.place().orElseThrow().page());
    assertEquals("18 (90)", united.place().orElseThrow().words());
    Box box = united.place().orElseThrow().boxes().get(0);
    assertEquals(unitedBox.left(), box.left(), 1);
    assertEquals(unitedBox.bottom(), box.bottom(), 1);
    assertTrue(united.field().outcome().orElseThrow().contains("union"));
    String arm = united.field().whose().arm().orElseThrow();
    PaperField other = of(paper, "events", "8").get(0);
    assertFalse(arm.equals(other.field().whose().arm().orElseThrow()), "two groups");
  }

  @Test
  void whatRunningTextSaysIsAskedWithItsSentence() throws IOException {
    PaperFields paper = paper(false);
    PaperField counted = of(paper, "events", "26").get(0);
    assertEquals(State.ASKED, counted.field().value().state());
    assertTrue(counted.field().value().why().contains("Later 26 of 32 limbs"));
    assertEquals("26 of 32 limbs (81%)", counted.place().orElseThrow().words());
    PaperField gap = of(paper, "defect_length_sd", "2.5").get(0);
    assertEquals(State.ASKED, gap.field().value().state());
    assertEquals("cm", gap.field().value().unit().orElseThrow().symbol());
    assertEquals(State.ASKED, of(paper, "first_author", "Hollowby").get(0).field().value().state());
    assertEquals(1, of(paper, "title", "Two ways over an invented gap").size());
    assertEquals(State.TAKEN, of(paper, "year", "2019").get(0).field().value().state());
    assertTrue(of(paper, "year", "2001").isEmpty());
  }

  @Test
  void nothingIsTakenFromLettersThatWereGuessed() throws IOException {
    PaperFields paper = paper(true);
    assertFalse(paper.fields().isEmpty());
    paper
        .fields()
        .forEach(
            field -> assertFalse(field.field().value().state() == State.TAKEN, field.toString()));
    assertTrue(paper.notes().stream().anyMatch(note -> note.contains("guessed")));
  }

  @Test
  void theJsonHoldsPlacesAndTables() throws IOException {
    JsonNode json = PaperFieldsJson.of(paper(false));
    for (JsonNode field : json.get("fields")) {
      assertTrue(field.get("page").asInt() == 1 && field.get("box").size() == 4, field.toString());
      assertTrue(field.get("words").asText().length() > 0);
    }
    assertEquals(4, json.get("grids").get(0).get("rows").size());
  }
}
