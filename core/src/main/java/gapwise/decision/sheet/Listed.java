package gapwise.decision.sheet;

import static gapwise.sentence.Sentences.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Sentences of which the last give way where the page is full; how many did is then said.
 *
 * @param head what is said first and always
 * @param items of which as many are told as there is room for
 * @param hidden how many more there are, which stand on the page of the table
 * @param tail what is said last and always
 */
public record Listed(List<String> head, List<String> items, int hidden, List<String> tail) {
  public Listed {
    head = List.copyOf(head);
    items = List.copyOf(items);
    tail = List.copyOf(tail);
    if (hidden < 0) {
      throw new IllegalArgumentException("hidden must be 0 or more, was " + hidden);
    }
  }

  /** Nothing but one sentence. */
  static Listed only(String sentence) {
    return new Listed(List.of(sentence), List.of(), 0, List.of());
  }

  /** So many of the items at most. */
  static Listed of(List<String> head, List<String> items, int most, List<String> tail) {
    int told = Math.min(most, items.size());
    return new Listed(head, items.subList(0, told), items.size() - told, tail);
  }

  /** All that is said. */
  public List<String> sentences() {
    List<String> all = new ArrayList<>(head);
    all.addAll(items);
    if (hidden > 0) {
      all.add(
          say(items.isEmpty() ? "sheet.all-further" : "sheet.further", Map.of("number", hidden)));
    }
    all.addAll(tail);
    return all;
  }

  /** The same with one item less; empty where there is none. */
  Optional<Listed> less() {
    return items.isEmpty()
        ? Optional.empty()
        : Optional.of(new Listed(head, items.subList(0, items.size() - 1), hidden + 1, tail));
  }
}
