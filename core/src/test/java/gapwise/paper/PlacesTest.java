package gapwise.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import gapwise.problem.WrongInputException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** From places to words and back. */
class PlacesTest {
  @TempDir Path folder;

  private Page page() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.text(60, 100, 10, "Union was achieved in 26 of 32 limbs (81%).");
      drawn.text(60, 112, 10, "No limb was lost. The frame was worn for a weight-");
      drawn.text(60, 124, 10, "bearing time of 8 to 10 months, and the treat-");
      drawn.text(60, 136, 10, "ment ended. Later 26 of 32 limbs were seen.");
      return drawn.read(folder, 1);
    }
  }

  @Test
  void aClickFindsTheWordAndADragAllWordsInReadingOrder() throws IOException {
    Page page = page();
    Word union = page.words().get(0);
    assertEquals(
        "Union", Places.at(page, union.box().middle(), union.box().centre()).orElseThrow().words());
    assertTrue(Places.at(page, 500, 700).isEmpty());
    Place drag = Places.in(page, new Box(50, 90, 400, 115)).orElseThrow();
    assertEquals(2, drag.boxes().size());
    assertTrue(drag.words().startsWith("Union was") && drag.words().endsWith("weight-"));
  }

  @Test
  void aPlaceGoesThroughJsonAndIsFoundAgain() throws IOException {
    Page page = page();
    Place first = Places.all(page, "26 of 32").get(0);
    Place second = Places.all(page, "26 of 32").get(1);
    Place read = Place.of(new ObjectMapper().readTree(second.toJson().toString()));
    assertEquals(second.words(), read.words());
    assertEquals(second.boxes(), Places.again(page, read).orElseThrow().boxes());
    Place moved = new Place(1, List.of(new Box(160, 70, 195, 80)), "26 of 32");
    assertEquals(first.boxes(), Places.again(page, moved).orElseThrow().boxes());
    assertTrue(Places.again(page, new Place(1, first.boxes(), "27 of 32")).isEmpty());
    assertTrue(Places.again(page, new Place(2, first.boxes(), "26 of 32")).isEmpty());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{}",
        "[]",
        "null",
        "{\"page\": 0, \"boxes\": [[1,2,3,4]], \"words\": \"a\"}",
        "{\"page\": 1.5, \"boxes\": [[1,2,3,4]], \"words\": \"a\"}",
        "{\"page\": 1, \"boxes\": [], \"words\": \"a\"}",
        "{\"page\": 1, \"boxes\": [[1,2,3]], \"words\": \"a\"}",
        "{\"page\": 1, \"boxes\": [[3,2,1,4]], \"words\": \"a\"}",
        "{\"page\": 1, \"boxes\": [[1,2,3,\"4\"]], \"words\": \"a\"}",
        "{\"page\": 1, \"boxes\": [[1,2,3,1e999]], \"words\": \"a\"}",
        "{\"page\": 1, \"boxes\": [[1,2,3,4]]}"
      })
  void whatIsNoPlaceIsRefused(String json) throws IOException {
    var node = new ObjectMapper().readTree(json);
    assertThrows(WrongInputException.class, () -> Place.of(node));
  }

  @Test
  void runningTextPutsPartedWordsTogetherAndLeadsBack() throws IOException {
    Page page = page();
    RunningText text = RunningText.of(List.of(page), (p, word) -> true);
    assertTrue(text.text().contains("and the treatment ended."), text.text());
    int from = text.text().indexOf("26 of 32");
    Place place = text.places(from, from + 8).get(0);
    assertEquals("26 of 32", place.words());
    assertEquals(Places.all(page, "26 of 32").get(0), place);
    int parted = text.text().indexOf("treatment");
    assertEquals(2, text.places(parted, parted + 9).get(0).boxes().size());
  }
}
