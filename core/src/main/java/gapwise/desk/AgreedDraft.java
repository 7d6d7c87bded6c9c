package gapwise.desk;

import gapwise.evidence.Reading;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.exchange.Template;
import gapwise.extraction.Extraction;
import gapwise.extraction.ReadRow;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** The agreed record of two extractions as a draft, so that it is checked and taken like any. */
public final class AgreedDraft {
  private static final String STATUS = "status";

  private AgreedDraft() {}

  /**
   * The draft of the rows that were agreed.
   *
   * @param baseVersion the version of the study that it follows, 0 for a new one
   * @param rows the rows
   * @param both the extractions, whose settled doubts stand here too
   * @param settled further doubts that stand
   */
  public static Draft of(
      String study,
      int baseVersion,
      List<ReadRow> rows,
      List<Extraction> both,
      List<SettledDoubt> settled) {
    List<DraftRow> drafted = new ArrayList<>();
    for (ReadRow row : rows) {
      add(drafted, row, drafted.size() + 1);
    }
    Map<String, SettledDoubt> doubts = new LinkedHashMap<>();
    both.forEach(
        one ->
            one.doubts()
                .forEach(
                    doubt ->
                        doubts.put(
                            doubt.key(),
                            new SettledDoubt(doubt.key(), doubt.by(), doubt.reason()))));
    settled.forEach(doubt -> doubts.put(doubt.key(), doubt));
    Optional<String> paper = both.stream().flatMap(one -> one.paper().stream()).findFirst();
    return new Draft(
        study,
        baseVersion,
        paper,
        drafted.size() + 1,
        drafted,
        List.of(),
        List.copyOf(doubts.values()),
        Optional.empty());
  }

  private static void add(List<DraftRow> drafted, ReadRow row, int block) {
    TreeMap<String, String> cells = new TreeMap<>(row.cells());
    if (row.sheet().equals(Template.STUDIES)) {
      cells.put(STATUS, ExtractionStatus.AGREED.code());
    }
    TreeMap<String, Reading> readings = new TreeMap<>(row.readings());
    boolean curve = row.sheet().equals(Template.CURVES);
    drafted.add(new DraftRow(drafted.size() + 1, row.sheet(), curve ? block : 0, cells, readings));
    row.further().forEach(one -> add(drafted, one, block));
  }

  /** What a person handed in of a draft that is hers alone. */
  public static List<Extraction.Doubt> doubts(Draft draft) {
    return draft.settled().stream()
        .map(one -> new Extraction.Doubt(one.key(), one.by(), one.reason()))
        .toList();
  }
}
