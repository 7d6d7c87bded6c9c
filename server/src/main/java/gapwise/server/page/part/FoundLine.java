package gapwise.server.page.part;

import gapwise.evidence.vocabulary.Outcome;
import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import gapwise.printed.Proposed;
import gapwise.untidy.FoundField;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.IntStream;

/**
 * One value that was found in a sheet or a table, before anything is taken.
 *
 * @param index its number among all that was found, from 0
 * @param whose of whom
 * @param what field or outcome
 * @param value with its unit; blank where there is none yet
 * @param from the words that it was read from, and where they stand
 * @param why what is to be said of it; empty text for nothing
 */
public record FoundLine(
    int index, String whose, String what, String value, String from, String why) {

  /**
   * Questions of one kind.
   *
   * @param name the kind of doubt
   * @param count how many there are
   * @param lines the first of them
   */
  public record Kind(String name, int count, List<FoundLine> lines) {
    public Kind {
      lines = List.copyOf(lines);
    }
  }

  /** A value in words. */
  public static FoundLine of(int index, FoundField field, String whose, String from) {
    Optional<TemplateColumn> known = Template.column(field.into(), field.value().column());
    String column = known.map(TemplateColumn::title).orElse(field.value().column());
    String what =
        field
            .outcome()
            .flatMap(Outcome.vocabulary()::find)
            .map(outcome -> outcome.label() + ": " + column)
            .orElse(column);
    String unit = field.value().unit().map(one -> " " + one.symbol()).orElse("");
    String text = field.value().text();
    return new FoundLine(
        index,
        whose,
        what,
        known.map(one -> one.inWords(text)).orElse(text) + unit,
        from,
        field.value().why());
  }

  /**
   * All values of one state, in their order.
   *
   * @param told a value in words, by its number among all
   */
  public static List<FoundLine> all(
      List<FoundField> fields,
      Proposed.State state,
      BiFunction<Integer, FoundField, FoundLine> told) {
    return IntStream.range(0, fields.size())
        .filter(at -> fields.get(at).value().state() == state)
        .mapToObj(at -> told.apply(at, fields.get(at)))
        .toList();
  }

  /**
   * What a person must decide, by kind of doubt.
   *
   * @param most lines of each kind
   */
  public static List<Kind> kinds(List<FoundField> fields, List<FoundLine> asked, int most) {
    Map<String, List<FoundLine>> kinds = new LinkedHashMap<>();
    for (FoundLine line : asked) {
      String kind = fields.get(line.index()).value().doubt().map(doubt -> doubt.label()).orElse("");
      kinds.computeIfAbsent(kind, any -> new ArrayList<>()).add(line);
    }
    return kinds.entrySet().stream()
        .map(
            one ->
                new Kind(
                    one.getKey(),
                    one.getValue().size(),
                    one.getValue().stream().limit(most).toList()))
        .toList();
  }
}
