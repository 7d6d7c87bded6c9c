package gapwise.exchange;

import gapwise.evidence.Detail;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.Vocabulary;
import gapwise.exchange.form.CellForm;
import gapwise.exchange.form.NumberForm;
import gapwise.exchange.form.UnreadableException;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;

/** One column for each entry of a vocabulary of details, made from the vocabulary. */
final class DetailFields {
  private record Entry(DetailKind kind, Field<Detail> field) {}

  private final List<Entry> entries;

  DetailFields(Vocabulary<DetailKind> vocabulary, String about) {
    entries =
        vocabulary.all().stream()
            .map(
                kind ->
                    new Entry(
                        kind,
                        Field.of(
                            columnOf(kind),
                            kind.label(),
                            about + (kind.numeric() ? " A number." : ""),
                            new DetailForm(kind))))
            .toList();
  }

  /** The column of a coded entry: hyphens become underscores. */
  static String columnOf(Coded entry) {
    return entry.code().replace('-', '_');
  }

  List<Field<?>> fields() {
    return entries.stream().<Field<?>>map(Entry::field).toList();
  }

  SortedMap<String, Detail> read(RowReader row) {
    SortedMap<String, Detail> details = new TreeMap<>();
    for (Entry entry : entries) {
      row.get(entry.field()).ifPresent(detail -> details.put(entry.kind().code(), detail));
    }
    return details;
  }

  void write(RowWriter row, SortedMap<String, Detail> details) {
    for (Entry entry : entries) {
      Detail detail = details.get(entry.kind().code());
      if (detail != null) {
        row.put(entry.field(), detail);
      }
    }
  }

  /**
   * The words as written, and the number that they are. Words that are no number are kept, for
   * papers print "0.5 to 1": a rule asks about them.
   */
  private record DetailForm(DetailKind kind) implements CellForm<Detail> {
    @Override
    public Detail read(String text) {
      return new Detail(text, kind.numeric() ? number(text) : OptionalDouble.empty());
    }

    private static OptionalDouble number(String text) {
      try {
        return OptionalDouble.of(NumberForm.share().read(text));
      } catch (UnreadableException words) {
        return OptionalDouble.empty();
      }
    }

    @Override
    public String write(Detail value) {
      return value.words();
    }

    @Override
    public List<String> allowed() {
      return kind.values();
    }
  }
}
