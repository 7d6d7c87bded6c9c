package gapwise.server.home;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class RememberedEachTest {
  private final List<List<String>> lookedUp = new ArrayList<>();

  private RememberedEach<String, Integer> lengths(int most) {
    return new RememberedEach<>(
        most,
        words -> {
          lookedUp.add(words);
          Map<String, Integer> lengths = new HashMap<>();
          words.stream()
              .filter(word -> !word.isEmpty())
              .forEach(word -> lengths.put(word, word.length()));
          return lengths;
        });
  }

  @Test
  void thoseNotThereYetAreLookedUpTogetherAndOnce() {
    RememberedEach<String, Integer> lengths = lengths(10);
    assertEquals(Map.of("tibia", 5, "femur", 5), lengths.of(List.of("tibia", "femur")));
    assertEquals(
        Map.of("femur", 5, "foot", 4, "fibula", 6), lengths.of(List.of("femur", "foot", "fibula")));
    assertEquals(Map.of("tibia", 5, "foot", 4), lengths.of(List.of("tibia", "foot")));
    assertEquals(List.of(List.of("tibia", "femur"), List.of("foot", "fibula")), lookedUp);
  }

  @Test
  void whatNothingIsKnownOfIsNotLookedForAgain() {
    RememberedEach<String, Integer> lengths = lengths(10);
    assertEquals(Map.of(), lengths.of(List.of("")));
    assertEquals(Map.of(), lengths.of(List.of("")));
    assertEquals(List.of(List.of("")), lookedUp);
  }

  @Test
  void theOneAskedForLeastRecentlyGoesFirst() {
    RememberedEach<String, Integer> lengths = lengths(2);
    lengths.of(List.of("tibia", "femur"));
    lengths.of(List.of("tibia"));
    lengths.of(List.of("foot"));
    lookedUp.clear();
    lengths.of(List.of("tibia", "femur"));
    assertEquals(List.of(List.of("femur")), lookedUp);
  }

  @Test
  void oneListMayAskForMoreThanIsKept() {
    RememberedEach<String, Integer> lengths = lengths(1);
    assertEquals(
        Map.of("tibia", 5, "femur", 5, "foot", 4), lengths.of(List.of("tibia", "femur", "foot")));
  }
}
