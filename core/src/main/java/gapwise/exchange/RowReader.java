package gapwise.exchange;

import gapwise.evidence.vocabulary.Missing;
import gapwise.exchange.form.CellForm;
import gapwise.exchange.form.Guard;
import gapwise.exchange.form.MissingWords;
import gapwise.exchange.form.UnreadableException;
import gapwise.exchange.form.WorkbookText;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.table.Cell;
import gapwise.table.Row;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;

/**
 * One row being turned into a value. Whatever cannot be read becomes a problem with its place, and
 * the reading goes on, so that a person hears of everything in one go.
 */
final class RowReader {
  private static final int LONGEST_SHOWN = 60;

  private final SheetHeader header;
  private final Row row;
  private final List<Cell> cells;
  private final Problems problems;
  private final SortedMap<String, Missing> missing = new TreeMap<>();
  private final Set<String> unread = new HashSet<>();
  private boolean sound = true;

  RowReader(SheetHeader header, Row row, Problems problems) {
    this.header = header;
    this.row = row;
    this.cells = row.cells();
    this.problems = problems;
  }

  /** The value of a column; empty when blank, marked as missing, or not readable. */
  <T> Optional<T> get(Field<T> field) {
    if (unread.contains(field.name())) {
      return Optional.empty();
    }
    Optional<Cell> cell =
        header
            .column(field.name())
            .map(column -> cells.get(column.index()))
            .filter(c -> !c.isBlank());
    if (cell.isEmpty()) {
      requirePresence(field);
      return Optional.empty();
    }
    String text = cell.get().stripped();
    if (!field.form().allowed().contains(text)) {
      Optional<Missing> reason = MissingWords.read(text);
      if (reason.isPresent()) {
        missing.put(field.name(), reason.get());
        requirePresence(field);
        return Optional.empty();
      }
    }
    return value(field, cell.get(), text);
  }

  private <T> Optional<T> value(Field<T> field, Cell cell, String text) {
    CellForm<T> form = field.form();
    boolean ofTime = form.type() == CellForm.Type.YEAR_MONTH || form.type() == CellForm.Type.DAY;
    if (cell.isDate() && !ofTime) {
      refuse(
          field,
          "date-damage",
          "Found the date "
              + text
              + ", which a spreadsheet may have made of something else, such as 3-5 or 1/2. Set the"
              + " cell's format to text and write again what the paper says.");
      return Optional.empty();
    }
    if (text.length() > WorkbookText.MOST_LETTERS) {
      return tooLong(field, text);
    }
    try {
      boolean words = form.type() == CellForm.Type.STRING;
      T value = form.read(words ? Guard.read(text) : text);
      // Written again a text may have become longer, by marks that keep it what it is.
      boolean fits = !words || !WorkbookText.isTooLong(Guard.write(form.write(value)));
      return fits ? Optional.of(value) : tooLong(field, text);
    } catch (UnreadableException unreadable) {
      String expected = Objects.requireNonNull(unreadable.getMessage(), "message");
      refuse(field, unreadable.code(), found(text, expected));
      return Optional.empty();
    }
  }

  /** A question begins a sentence of its own; what was expected goes on with the first. */
  private static String found(String text, String expected) {
    String end = Character.isUpperCase(expected.charAt(0)) ? "'. " : "'; ";
    return "Found '" + shown(text) + end + expected;
  }

  private <T> Optional<T> tooLong(Field<T> field, String text) {
    refuse(
        field,
        "text-too-long",
        String.format(
            Locale.ROOT,
            "Found a text of %,d letters ('%s'); a cell holds at most %,d, the marks counted that"
                + " keep a spreadsheet program from running or changing it. Shorten it to what the"
                + " paper says of this field.",
            text.length(),
            shown(text),
            WorkbookText.MOST_LETTERS));
    return Optional.empty();
  }

  private void requirePresence(Field<?> field) {
    if (field.required() && header.column(field.name()).isPresent()) {
      refuse(
          field,
          "missing-value",
          "The cell holds no value; every row needs one here ("
              + field.title()
              + "). Fill it in, or delete the row.");
    }
  }

  OptionalDouble number(Field<Double> field) {
    Optional<Double> value = get(field);
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
  }

  OptionalInt count(Field<Integer> field) {
    Optional<Integer> value = get(field);
    return value.isPresent() ? OptionalInt.of(value.get()) : OptionalInt.empty();
  }

  /** What stands in a column, for a message; empty when nothing does. */
  String shown(Field<?> field) {
    return header
        .column(field.name())
        .map(column -> shown(cells.get(column.index()).stripped()))
        .orElse("");
  }

  private static String shown(String text) {
    String start = text.substring(0, Math.min(text.length(), 10 * LONGEST_SHOWN));
    String line = start.replaceAll("\\s+", " ");
    return line.length() <= LONGEST_SHOWN ? line : line.substring(0, LONGEST_SHOWN) + "...";
  }

  /** Adds a problem at a column of this row. */
  void refuse(Field<?> field, String code, String message) {
    sound = false;
    unread.add(field.name());
    problems.add(new Problem(header.at(row.number(), field.name()), code, message, study()));
  }

  /** The study that the row is of, as it stands there. */
  private String study() {
    return shown(Keys.STUDY);
  }

  /**
   * Refuses two numbers that stand the wrong way round, at both columns. Nothing is said where one
   * of them is not there or has been found wrong already.
   */
  void requireOrder(Field<Double> low, Field<Double> high) {
    OptionalDouble lower = number(low);
    OptionalDouble upper = number(high);
    if (lower.isPresent() && upper.isPresent() && lower.getAsDouble() > upper.getAsDouble()) {
      sound = false;
      unread.add(low.name());
      unread.add(high.name());
      problems.add(
          new Problem(
              header.at(row.number(), low.name(), high.name()),
              "impossible",
              "Found "
                  + low.name()
                  + " "
                  + shown(low)
                  + ", which is larger than "
                  + high.name()
                  + " "
                  + shown(high)
                  + ". Check both against the paper and correct the row.",
              study()));
    }
  }

  /** Whether one of these columns has been found wrong in this row. */
  boolean hasRefused(List<Field<?>> fields) {
    return fields.stream().anyMatch(field -> unread.contains(field.name()));
  }

  /**
   * Builds a value out of cells. Each cell has been checked by itself before, so that a value
   * hardly ever refuses them; when it does, the columns that are filled are named together. Nothing
   * is said where one of them has been found wrong already.
   */
  <T> Optional<T> built(Supplier<T> value, Field<?>... from) {
    try {
      return Optional.of(value.get());
    } catch (IllegalArgumentException refused) {
      List<Field<?>> filled = Arrays.stream(from).filter(field -> !shown(field).isEmpty()).toList();
      if (!hasRefused(List.of(from))) {
        refuse(
            filled.isEmpty() ? from[0] : filled.get(0),
            "impossible",
            "What stands in "
                + String.join(", ", filled.stream().map(Field::name).toList())
                + " does not go together. Check it against the paper and correct the row.");
      }
      sound = false;
      return Optional.empty();
    }
  }

  /** Why cells hold no value, by column, of the columns read so far. */
  SortedMap<String, Missing> missing() {
    return missing;
  }

  /** Whether nothing wrong has been found in this row. */
  boolean isSound() {
    return sound;
  }

  int number() {
    return row.number();
  }
}
