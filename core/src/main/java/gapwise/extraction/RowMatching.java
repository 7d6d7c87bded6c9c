package gapwise.extraction;

import gapwise.exchange.Template;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * Puts the rows of two extractions together that tell of the same: first as a person said, then by
 * what tells them apart, the groups before all that hangs on them. Rows alike in the surest way go
 * by their order; in a less sure way only where one row of each side fits.
 */
final class RowMatching {
  private static final Set<String> NAMES_OF_ARMS = Set.of(Template.ARM, "against_arm", "test_arm");

  private final Collection<SameRow> said;

  private RowMatching(Collection<SameRow> said) {
    this.said = said;
  }

  static List<RowPair> of(List<ReadRow> first, List<ReadRow> second, Collection<SameRow> said) {
    RowMatching matching = new RowMatching(said);
    List<RowPair> arms = matching.sheet(Template.ARMS, first, second);
    Map<String, String> names = names(arms);
    List<ReadRow> renamed = second.stream().map(row -> named(row, names)).toList();
    List<RowPair> pairs = new ArrayList<>();
    for (String sheet : Template.names()) {
      if (sheet.equals(Template.ARMS)) {
        arms.forEach(
            pair ->
                pairs.add(
                    new RowPair(sheet, pair.first(), pair.second().map(row -> named(row, names)))));
      } else {
        pairs.addAll(matching.sheet(sheet, first, renamed));
      }
    }
    return List.copyOf(pairs);
  }

  /**
   * What the first person calls each group of the second; a group of hers alone gets a free name.
   */
  private static Map<String, String> names(List<RowPair> arms) {
    Map<String, String> names = new LinkedHashMap<>();
    Set<String> taken = new HashSet<>();
    arms.forEach(pair -> pair.first().ifPresent(row -> taken.add(row.text(Template.ARM))));
    for (RowPair pair : arms) {
      if (pair.second().isPresent()) {
        String hers = pair.second().get().text(Template.ARM);
        if (pair.first().isPresent()) {
          names.put(hers, pair.first().get().text(Template.ARM));
        } else {
          String free = hers;
          for (int next = 2; !taken.add(free); next++) {
            free = hers + "-" + next;
          }
          names.put(hers, free);
        }
      }
    }
    return names;
  }

  private static ReadRow named(ReadRow row, Map<String, String> names) {
    Map<String, String> cells = new LinkedHashMap<>(row.cells());
    cells.replaceAll(
        (column, text) -> NAMES_OF_ARMS.contains(column) ? names.getOrDefault(text, text) : text);
    return new ReadRow(
        row.sheet(),
        row.number(),
        cells,
        row.readings(),
        row.further().stream().map(one -> named(one, names)).toList());
  }

  private List<RowPair> sheet(String sheet, List<ReadRow> first, List<ReadRow> second) {
    List<ReadRow> left = new ArrayList<>(of(sheet, first));
    List<ReadRow> right = new ArrayList<>(of(sheet, second));
    Map<Integer, ReadRow> found = new LinkedHashMap<>();
    for (SameRow one : said) {
      if (one.same() && one.sheet().equals(sheet)) {
        Optional<ReadRow> mine = numbered(left, one.first());
        Optional<ReadRow> hers = numbered(right, one.second());
        if (mine.isPresent() && hers.isPresent()) {
          take(mine.get(), hers.get(), left, right, found);
        }
      }
    }
    boolean surest = true;
    for (Function<ReadRow, String> key : RowKeys.of(sheet)) {
      match(key, surest, left, right, found);
      surest = false;
    }
    List<RowPair> pairs = new ArrayList<>();
    for (ReadRow row : of(sheet, first)) {
      pairs.add(new RowPair(sheet, Optional.of(row), Optional.ofNullable(found.get(row.number()))));
    }
    right.forEach(row -> pairs.add(new RowPair(sheet, Optional.empty(), Optional.of(row))));
    return pairs;
  }

  private void match(
      Function<ReadRow, String> key,
      boolean surest,
      List<ReadRow> left,
      List<ReadRow> right,
      Map<Integer, ReadRow> found) {
    Map<String, List<ReadRow>> hers = byKey(right, key);
    byKey(left, key)
        .forEach(
            (text, mine) -> {
              List<ReadRow> others = hers.getOrDefault(text, List.of());
              boolean one = mine.size() == 1 && others.size() == 1;
              int both = surest || one ? Math.min(mine.size(), others.size()) : 0;
              for (int i = 0; i < both; i++) {
                if (!isApart(mine.get(i), others.get(i))) {
                  take(mine.get(i), others.get(i), left, right, found);
                }
              }
            });
  }

  private boolean isApart(ReadRow mine, ReadRow hers) {
    return said.stream()
        .anyMatch(
            one ->
                !one.same()
                    && one.sheet().equals(mine.sheet())
                    && one.first() == mine.number()
                    && one.second() == hers.number());
  }

  private static void take(
      ReadRow mine,
      ReadRow hers,
      List<ReadRow> left,
      List<ReadRow> right,
      Map<Integer, ReadRow> found) {
    found.put(mine.number(), hers);
    left.remove(mine);
    right.remove(hers);
  }

  private static Map<String, List<ReadRow>> byKey(
      List<ReadRow> rows, Function<ReadRow, String> key) {
    Map<String, List<ReadRow>> byKey = new LinkedHashMap<>();
    for (ReadRow row : rows) {
      String text = key.apply(row);
      if (!text.isEmpty()) {
        byKey.computeIfAbsent(text, none -> new ArrayList<>()).add(row);
      }
    }
    return byKey;
  }

  private static List<ReadRow> of(String sheet, List<ReadRow> rows) {
    return rows.stream().filter(row -> row.sheet().equals(sheet)).toList();
  }

  private static Optional<ReadRow> numbered(List<ReadRow> rows, int number) {
    return rows.stream().filter(row -> row.number() == number).findFirst();
  }
}
