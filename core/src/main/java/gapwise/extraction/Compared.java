package gapwise.extraction;

import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/**
 * Two extractions of one paper, side by side.
 *
 * @param pairs the rows that tell of the same, and those of one person alone
 * @param differences what differs, in the order of sheets, rows and columns
 * @param alike fields that both filled, and filled alike
 */
public record Compared(List<RowPair> pairs, List<Difference> differences, List<Alike> alike) {
  public Compared {
    pairs = List.copyOf(pairs);
    differences = List.copyOf(differences);
    alike = List.copyOf(alike);
  }

  /** A field that both filled alike. */
  public record Alike(RowPair pair, TemplateColumn column, String text) {}

  /**
   * Compares them.
   *
   * @param said what persons said of rows
   */
  public static Compared of(Extraction first, Extraction second, Collection<SameRow> said) {
    List<RowPair> pairs =
        RowMatching.of(ReadRow.of(first.extracted()), ReadRow.of(second.extracted()), said);
    List<Difference> differences = new ArrayList<>();
    List<Alike> alike = new ArrayList<>();
    for (RowPair pair : pairs) {
      if (pair.only().isEmpty()) {
        FieldsOfRow fields = FieldsOfRow.of(pair);
        differences.addAll(fields.differences());
        alike.addAll(fields.alike());
      } else if (!isOfOneGroupOnly(pair, pairs)) {
        differences.add(FieldsOfRow.whole(pair));
      }
    }
    return new Compared(pairs, differences, alike);
  }

  /** What hangs on a group that one person alone has goes with the group and is not asked. */
  static boolean isOfOneGroupOnly(RowPair pair, List<RowPair> pairs) {
    return !pair.sheet().equals(Template.ARMS)
        && pairs.stream()
            .filter(one -> isGroup(one) && one.only().isPresent())
            .anyMatch(one -> one.any().text(Template.ARM).equals(pair.any().text(Template.ARM)));
  }

  /** A row of one group; that of all groups together names none. */
  static boolean isGroup(RowPair pair) {
    return pair.sheet().equals(Template.ARMS)
        && !pair.any().text(Template.ARM).equals(Template.ALL);
  }

  /** The difference of a key. */
  public Optional<Difference> difference(String key) {
    return differences.stream().filter(one -> one.key().equals(key)).findFirst();
  }

  /** Those that are settled together with one: all of a quantity whose unit differs. */
  public List<Difference> together(Difference one) {
    if (one.together().isEmpty()) {
      return List.of(one);
    }
    return differences.stream()
        .filter(other -> other.pair().equals(one.pair()))
        .filter(other -> other.together().equals(one.together()))
        .toList();
  }
}
