package gapwise.desk;

import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import gapwise.printed.Printed;
import gapwise.printed.PrintedValue;
import gapwise.printed.Proposed;
import gapwise.printed.Proposer;
import gapwise.printed.Said;
import gapwise.printed.Setting;
import gapwise.printed.Wanted;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What words of a paper give to the field that a person has in hand, and to the fields that belong
 * to it: "26/32 (81%)" to events, total and percentage, "28 weeks" to a mean and its unit. Where
 * two readings are possible nothing is put, and the person chooses.
 */
public final class ReadWords {
  private ReadWords() {}

  /**
   * What to put into one cell of the same row.
   *
   * @param column its column
   * @param text what to put
   * @param asked why a person must decide; empty where it may be put
   */
  public record Put(String column, String text, Optional<String> asked) {}

  /**
   * Reads words for a cell.
   *
   * @param row the row of the cell
   * @param column its column
   * @param words as printed
   * @return what to put, the cell in hand first where it gets something; at least one
   */
  public static List<Put> of(Draft draft, DraftRow row, String column, String words) {
    TemplateColumn wanted =
        Template.column(row.sheet(), column)
            .orElseThrow(() -> new IllegalArgumentException("no column " + column));
    PrintedValue value = Printed.read(words);
    if (value instanceof PrintedValue.Nothing || isOfWords(wanted)) {
      return List.of(new Put(column, words.strip(), Optional.empty()));
    }
    if (value instanceof PrintedValue.Amount amount && wanted.number()) {
      return amount(row, column, amount);
    }
    return proposed(draft, row, column, words);
  }

  /** Whether any words may stand in it. */
  private static boolean isOfWords(TemplateColumn column) {
    return !column.number() && column.choices().isEmpty();
  }

  private static List<Put> amount(DraftRow row, String column, PrintedValue.Amount amount) {
    List<Put> puts = new ArrayList<>();
    Optional<String> asked =
        amount.bound() == PrintedValue.Bound.EXACT
            ? Optional.empty()
            : Optional.of("The paper does not print this number as exact. Put it if it is meant.");
    String text = plain(amount.value());
    Optional<String> unitColumn = amount.unit().flatMap(unit -> unitColumn(row.sheet(), column));
    if (unitColumn.isPresent()) {
      Unit unit = amount.unit().orElseThrow();
      String stands = row.text(unitColumn.get());
      if (!stands.isEmpty() && !stands.equals(unit.symbol())) {
        return List.of(
            new Put(
                column,
                text,
                Optional.of(
                    "The paper prints "
                        + unit.symbol()
                        + " here, and the unit of the field is "
                        + stands
                        + ". Put the number if the unit is changed too, or type it converted.")));
      }
      puts.add(new Put(column, text, asked));
      puts.add(new Put(unitColumn.get(), unit.symbol(), asked));
      return puts;
    }
    puts.add(new Put(column, text, asked));
    return puts;
  }

  /** The column that holds the unit of another; empty where it has none. */
  static Optional<String> unitColumn(String sheet, String column) {
    List<String> candidates = new ArrayList<>();
    candidates.add(column + "_unit");
    int cut = column.lastIndexOf('_');
    if (cut > 0) {
      candidates.add(column.substring(0, cut) + "_unit");
    }
    if (sheet.equals(Template.OUTCOMES)) {
      candidates.add("unit");
    }
    return candidates.stream()
        .filter(name -> !name.equals(column))
        .filter(name -> Template.column(sheet, name).isPresent())
        .findFirst();
  }

  private static List<Put> proposed(Draft draft, DraftRow row, String column, String words) {
    Optional<Wanted> wanted = wanted(row, column);
    if (wanted.isEmpty()) {
      return List.of(asked(column, words));
    }
    List<Put> puts = new ArrayList<>();
    for (Proposed one : Proposer.propose(words, wanted.get(), setting(draft, row))) {
      if (one.state() != Proposed.State.LEFT
          && !one.text().isEmpty()
          && Template.column(row.sheet(), one.column()).isPresent()) {
        boolean taken = one.state() == Proposed.State.TAKEN;
        puts.add(
            new Put(one.column(), one.text(), taken ? Optional.empty() : Optional.of(one.why())));
        one.unit()
            .flatMap(unit -> unitColumn(row.sheet(), one.column()).map(at -> unit(at, unit)))
            .filter(unit -> row.text(unit.column()).isEmpty())
            .filter(unit -> taken && !puts.contains(unit))
            .ifPresent(puts::add);
      }
    }
    return puts.isEmpty() ? List.of(asked(column, words)) : List.copyOf(puts);
  }

  private static Put unit(String column, Unit unit) {
    return new Put(column, unit.symbol(), Optional.empty());
  }

  private static Put asked(String column, String words) {
    return new Put(
        column,
        words.strip(),
        Optional.of("These words do not read as what the field holds. Put them if they do."));
  }

  private static Optional<Wanted> wanted(DraftRow row, String column) {
    if (row.sheet().equals(Template.OUTCOMES)) {
      return Outcome.vocabulary().find(row.text(Template.OUTCOME)).map(Wanted::outcome);
    }
    return row.sheet().equals(Template.APPRAISAL)
        ? Optional.empty()
        : Optional.of(Wanted.column(row.sheet(), column));
  }

  /** How many the group has, where the draft says so already. */
  private static Setting setting(Draft draft, DraftRow row) {
    OptionalDouble size =
        draft.rows(Template.ARMS).stream()
            .filter(arm -> arm.text(Template.ARM).equals(row.text(Template.ARM)))
            .map(arm -> arm.text("patients"))
            .filter(text -> text.matches("\\d{1,6}"))
            .mapToDouble(Double::parseDouble)
            .findFirst();
    return new Setting(Said.NOTHING, size, false);
  }

  private static String plain(double value) {
    BigDecimal exact = BigDecimal.valueOf(value);
    return exact.signum() == 0 ? "0" : exact.stripTrailingZeros().toPlainString();
  }
}
