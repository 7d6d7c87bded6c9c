package gapwise.extraction;

import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Counts, field by field, how two people filled the rows of all papers that were read apart. */
public final class TeamAgreement {
  private final Map<String, Counted> fields = new LinkedHashMap<>();
  private int papers;

  private static final class Counted {
    private final Set<Integer> papers = new HashSet<>();
    private final List<FieldAgreement.Texts> pairs = new ArrayList<>();
    private int alike;
    private int differ;
    private int oneEmpty;
  }

  /** Adds a paper. */
  public void add(Compared paper) {
    papers++;
    paper.alike().forEach(one -> both(one.pair(), one.column(), one.text(), one.text()));
    for (Difference one : paper.differences()) {
      if (one.column().isPresent()) {
        both(one.pair(), one.column().get(), one.first().text(), one.second().text());
      }
    }
    for (RowPair pair : paper.pairs()) {
      if (pair.only().isPresent()) {
        Template.columns(pair.sheet()).stream()
            .filter(column -> FieldsOfRow.isRead(pair.sheet(), column.name()))
            .filter(column -> !pair.any().text(column.name()).isEmpty())
            .forEach(column -> both(pair, column, pair.any().text(column.name()), ""));
      }
    }
  }

  private void both(RowPair pair, TemplateColumn column, String first, String second) {
    Counted counted =
        fields.computeIfAbsent(pair.sheet() + "." + column.name(), none -> new Counted());
    counted.papers.add(papers);
    if (first.isEmpty() || second.isEmpty()) {
      counted.oneEmpty++;
      return;
    }
    if (first.equals(second)) {
      counted.alike++;
    } else {
      counted.differ++;
    }
    counted.pairs.add(new FieldAgreement.Texts(first, second, unit(pair, column)));
  }

  private static String unit(RowPair pair, TemplateColumn column) {
    Optional<String> unit = Units.of(pair.sheet(), column.name());
    String first = unit.flatMap(name -> pair.first().map(row -> row.text(name))).orElse("");
    String second = unit.flatMap(name -> pair.second().map(row -> row.text(name))).orElse("");
    return first.equals(second) ? first : first + " and " + second;
  }

  /** How many papers were added. */
  public int papers() {
    return papers;
  }

  /** The fields that anybody filled, in the order of sheets and columns. */
  public List<FieldAgreement> fields() {
    List<FieldAgreement> all = new ArrayList<>();
    for (String sheet : Template.names()) {
      for (TemplateColumn column : Template.columns(sheet)) {
        Optional.ofNullable(fields.get(sheet + "." + column.name()))
            .ifPresent(
                one ->
                    all.add(
                        new FieldAgreement(
                            sheet,
                            column,
                            one.papers.size(),
                            one.alike,
                            one.differ,
                            one.oneEmpty,
                            one.pairs)));
      }
    }
    return List.copyOf(all);
  }
}
