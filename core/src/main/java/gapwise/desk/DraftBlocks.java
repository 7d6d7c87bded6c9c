package gapwise.desk;

import gapwise.exchange.Template;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Puts the outcomes of a study into blocks: the same outcome of its groups side by side. */
final class DraftBlocks {
  /** Rows that are alike in these tell of the same outcome, each of another group. */
  private static final List<String> SAME =
      List.of(
          Template.OUTCOME,
          "against_arm",
          "phase",
          "subgroup",
          "defect_from_cm",
          "defect_to_cm",
          "time_point",
          "time_point_unit",
          "clock",
          "definition",
          "effect_kind",
          "effect_adjusted_for",
          "standing");

  private record Block(List<String> same, int occurrence) {}

  private final Map<Block, Integer> blocks = new HashMap<>();
  private final Map<Integer, Set<String>> armsOf = new HashMap<>();

  private DraftBlocks() {}

  /** The rows of a study, numbered from 1, each in its block. */
  static List<DraftRow> rows(List<Template.FilledRow> filled) {
    DraftBlocks blocks = new DraftBlocks();
    List<DraftRow> rows = new ArrayList<>();
    for (Template.FilledRow row : filled) {
      int number = rows.size() + 1;
      int block = row.sheet().equals(Template.OUTCOMES) ? blocks.of(row, number) : 0;
      rows.add(DraftReadings.row(number, block, row));
    }
    return rows;
  }

  /** The block of a row; one that has the row's group already is full. */
  private int of(Template.FilledRow row, int number) {
    List<String> same = SAME.stream().map(one -> row.cells().getOrDefault(one, "")).toList();
    String arm = row.cells().getOrDefault(Template.ARM, "");
    for (int occurrence = 0; ; occurrence++) {
      int block = blocks.computeIfAbsent(new Block(same, occurrence), key -> number);
      if (armsOf.computeIfAbsent(block, key -> new HashSet<>()).add(arm)) {
        return block;
      }
    }
  }
}
