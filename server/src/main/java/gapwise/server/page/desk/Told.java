package gapwise.server.page.desk;

import gapwise.desk.Draft;
import gapwise.desk.DraftCheck;
import gapwise.desk.DraftRow;
import gapwise.desk.KeptDraft;
import gapwise.desk.Noted;
import gapwise.desk.UsedBySynthesis;
import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import gapwise.exchange.TemplateWords;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What is to be said of a draft as it stands.
 *
 * @param draft its name in addresses
 * @param reader whose it is alone, of a paper that two people extract apart
 * @param kept when it was last kept
 * @param impossible how many things cannot be so
 * @param needed how many are still to be filled in
 * @param doubts how many are doubtful
 * @param lines each of them, the gravest first
 */
public record Told(
    String draft,
    Optional<String> reader,
    String kept,
    int impossible,
    int needed,
    int doubts,
    List<Line> lines) {
  private static final List<String> NAMED_BY =
      List.of(Template.PATIENT, Template.OUTCOME, Template.ARM);

  public Told {
    Objects.requireNonNull(reader, "reader");
    lines = List.copyOf(lines);
  }

  /**
   * One thing.
   *
   * @param noted what it is
   * @param cells the elements that it is about
   * @param where the same in words
   * @param message what was found and what to do, in the words of the fields
   * @param by who let a doubt stand, and why
   */
  public record Line(
      Noted noted, List<String> cells, String where, String message, Optional<String> by) {
    /** The first of the elements, to go there. */
    public Optional<String> first() {
      return cells.stream().findFirst();
    }
  }

  static Told of(KeptDraft kept, DraftCheck check) {
    Draft draft = kept.draft();
    return new Told(
        kept.id(),
        draft.reader(),
        DeskPage.keptAt(kept),
        check.count(Noted.Weight.IMPOSSIBLE),
        check.count(Noted.Weight.NEEDED),
        check.count(Noted.Weight.DOUBT),
        Stream.concat(check.noted().stream(), UsedBySynthesis.of(draft).stream())
            .map(noted -> line(draft, noted))
            .toList());
  }

  private static Line line(Draft draft, Noted noted) {
    Optional<DraftRow> row =
        noted.row().isPresent() ? draft.row(noted.row().getAsInt()) : Optional.empty();
    List<String> cells =
        row.filter(found -> found.sheet().equals(Template.CURVES))
            .map(found -> List.of("curve-" + found.block()))
            .or(
                () ->
                    row.map(
                        found ->
                            noted.columns().stream()
                                .map(column -> FormCell.id(found.number(), column))
                                .toList()))
            .orElse(List.of());
    return new Line(
        noted,
        cells,
        row.map(found -> where(found, noted.columns())).orElse(""),
        row.map(found -> TemplateWords.said(found.sheet(), noted.message()))
            .orElse(TemplateWords.said(noted.message())),
        by(draft, noted));
  }

  private static Optional<String> by(Draft draft, Noted noted) {
    return noted.weight() == Noted.Weight.SETTLED
        ? draft.settled().stream()
            .filter(one -> noted.key().filter(one.key()::equals).isPresent())
            .map(one -> one.line())
            .findFirst()
        : Optional.empty();
  }

  private static String where(DraftRow row, List<String> columns) {
    String part = TemplateWords.part(row.sheet());
    String whose = String.join(", ", TemplateWords.row(row.sheet(), NAMED_BY, row::text));
    String fields =
        columns.stream()
            .flatMap(column -> Template.column(row.sheet(), column).stream())
            .map(TemplateColumn::title)
            .collect(Collectors.joining(" and "));
    return Stream.of(whose.isEmpty() ? part : part + " " + whose, fields)
        .filter(text -> !text.isEmpty())
        .collect(Collectors.joining(": "));
  }
}
