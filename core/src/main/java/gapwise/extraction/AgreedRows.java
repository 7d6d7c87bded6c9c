package gapwise.extraction;

import gapwise.evidence.Reading;
import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import gapwise.extraction.FieldChoice.Taken;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * The rows of the agreed record: what both read alike, and of the rest what was chosen. The place
 * and the words of a row are of the person from whom most of what differed was taken, of the first
 * where that is even; where a person noted none, of the other.
 */
public final class AgreedRows {
  private final Compared compared;
  private final Map<String, FieldChoice> choices;

  private AgreedRows(Compared compared, Map<String, FieldChoice> choices) {
    this.compared = compared;
    this.choices = choices;
  }

  /**
   * The rows, in the order of their sheets.
   *
   * @param choices by the key of their difference
   * @param all whether differences that nobody settled yet must not be: else they stay empty
   * @throws IllegalStateException where one is not settled, and all must be
   */
  public static List<ReadRow> of(Compared compared, Map<String, FieldChoice> choices, boolean all) {
    if (all && !open(compared, choices).isEmpty()) {
      throw new IllegalStateException("differences that nobody settled");
    }
    return new AgreedRows(compared, choices).rows();
  }

  /** The differences that nobody settled yet. */
  public static List<Difference> open(Compared compared, Map<String, FieldChoice> choices) {
    return compared.differences().stream().filter(one -> !choices.containsKey(one.key())).toList();
  }

  private List<ReadRow> rows() {
    Set<String> without = new HashSet<>();
    List<ReadRow> rows = new ArrayList<>();
    for (RowPair pair : compared.pairs()) {
      if (Compared.isGroup(pair) && !stays(pair)) {
        without.add(pair.any().text(Template.ARM));
      }
    }
    for (RowPair pair : compared.pairs()) {
      boolean ofGoneGroup = without.contains(pair.any().text(Template.ARM));
      if (!ofGoneGroup && stays(pair)) {
        rows.add(pair.only().isPresent() ? pair.any() : merged(pair));
      }
    }
    return List.copyOf(rows);
  }

  /** Whether a row is in the agreed record: one of one person alone only where that was chosen. */
  private boolean stays(RowPair pair) {
    Optional<Side> only = pair.only();
    if (only.isEmpty() || Compared.isOfOneGroupOnly(pair, compared.pairs())) {
      return true;
    }
    return Optional.ofNullable(choices.get(pair.key()))
        .filter(choice -> choice.taken() == Taken.of(only.get()))
        .isPresent();
  }

  private ReadRow merged(RowPair pair) {
    ReadRow first = pair.first().orElseThrow();
    ReadRow second = pair.second().orElseThrow();
    if (pair.sheet().equals(Template.CURVES)) {
      return Optional.ofNullable(choices.get(pair.key() + ".share"))
              .filter(choice -> choice.taken() == Taken.SECOND)
              .isPresent()
          ? second
          : first;
    }
    Map<String, String> cells = new LinkedHashMap<>();
    Map<String, Reading> readings = new TreeMap<>();
    int more = 0;
    for (TemplateColumn column : Template.columns(pair.sheet())) {
      String name = column.name();
      if (!FieldsOfRow.isRead(pair.sheet(), name)) {
        continue;
      }
      if (first.text(name).equals(second.text(name))) {
        put(cells, name, first.text(name));
        first.reading(name).or(() -> second.reading(name)).ifPresent(at -> readings.put(name, at));
        continue;
      }
      Optional<FieldChoice> chosen = Optional.ofNullable(choices.get(pair.key() + "." + name));
      if (chosen.isPresent()) {
        FieldChoice choice = chosen.get();
        put(cells, name, choice.value());
        more += choice.taken() == Taken.FIRST ? 1 : choice.taken() == Taken.SECOND ? -1 : 0;
        reading(choice.taken(), first, second, name).ifPresent(at -> readings.put(name, at));
      }
    }
    beside(pair, more >= 0 ? first : second, more >= 0 ? second : first, cells);
    return first.withCells(cells, readings);
  }

  private static Optional<Reading> reading(
      Taken taken, ReadRow first, ReadRow second, String column) {
    return switch (taken) {
      case FIRST -> first.reading(column);
      case SECOND -> second.reading(column);
      case THIRD -> Optional.empty();
    };
  }

  private static void beside(RowPair pair, ReadRow most, ReadRow other, Map<String, String> cells) {
    cells.put(Template.STUDY, most.text(Template.STUDY));
    for (String column : FieldsOfRow.BESIDE) {
      put(cells, column, most.text(column).isEmpty() ? other.text(column) : most.text(column));
    }
    if (pair.sheet().equals(Template.APPRAISAL)) {
      put(cells, "on", most.text("on").isEmpty() ? other.text("on") : most.text("on"));
      String one = pair.first().orElseThrow().text("by");
      String two = pair.second().orElseThrow().text("by");
      boolean both = !one.isEmpty() && !two.isEmpty() && !one.equals(two);
      put(cells, "by", both ? one + ", " + two : one.isEmpty() ? two : one);
    }
  }

  private static void put(Map<String, String> cells, String column, String text) {
    if (!text.isEmpty()) {
      cells.put(column, text);
    }
  }
}
