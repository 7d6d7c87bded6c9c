package gapwise.desk;

import gapwise.exchange.Template;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Puts rows of a study into blocks: the same outcome of its groups side by side, the items of one
 * appraisal below each other.
 */
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

  /** Rows that are alike in these are items of one appraisal. */
  private static final List<String> SAME_MATTER =
      List.of("instrument", "instrument_version", "outcome", "comparison");

  /** Rows that are alike in these are of one curve. */
  private static final List<String> SAME_CURVE = List.of(Template.ARM, Template.OUTCOME);

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
      int block =
          switch (row.sheet()) {
            case "outcomes" -> blocks.of(row, number, SAME, Template.ARM);
            case "appraisal" -> blocks.of(row, number, SAME_MATTER, "item");
            case "curves" -> blocks.together(row, number, SAME_CURVE);
            default -> 0;
          };
      rows.add(DraftReadings.row(number, block, row));
    }
    return rows;
  }

  private int together(Template.FilledRow row, int number, List<String> alike) {
    List<String> same = new ArrayList<>(List.of(row.sheet()));
    alike.forEach(one -> same.add(row.cells().getOrDefault(one, "")));
    return blocks.computeIfAbsent(new Block(same, 0), key -> number);
  }

  /** The block of a row; one that has the row's group, or item, already is full. */
  private int of(Template.FilledRow row, int number, List<String> alike, String apart) {
    List<String> same = new ArrayList<>(List.of(row.sheet()));
    alike.forEach(one -> same.add(row.cells().getOrDefault(one, "")));
    String arm = row.cells().getOrDefault(apart, "");
    for (int occurrence = 0; ; occurrence++) {
      int block = blocks.computeIfAbsent(new Block(same, occurrence), key -> number);
      if (armsOf.computeIfAbsent(block, key -> new HashSet<>()).add(arm)) {
        return block;
      }
    }
  }
}
