package gapwise.untidy;

import gapwise.evidence.unit.Unit;
import gapwise.printed.Doubt;
import gapwise.printed.PrintedValue;
import gapwise.printed.Proposed;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** Checks values that stand in different cells against each other; what cannot be is asked. */
final class CrossChecks {
  /** Longer than a human thigh bone; common practice, no source. */
  private static final double LONGEST_DEFECT_CM = 45;

  /** Older than anybody who is operated on; common practice, no source. */
  private static final double OLDEST = 110;

  private static final List<String> SHARES =
      List.of("", "infected", "male", "smokers", "diabetics");

  /** What is to be asked, by field; fields that are equal may stand in several cells. */
  private final Map<FoundField, Proposed> asked = new IdentityHashMap<>();

  private final Function<FoundField.Whose, List<Double>> sizes;

  private CrossChecks(Function<FoundField.Whose, List<Double>> sizes) {
    this.sizes = sizes;
  }

  /**
   * The fields of one table, with what contradicts itself asked.
   *
   * @param sizes how many a group has
   */
  static List<FoundField> of(
      List<FoundField> fields, Function<FoundField.Whose, List<Double>> sizes) {
    CrossChecks checks = new CrossChecks(sizes);
    checks.repeated(fields).values().forEach(checks::check);
    return checks.applied(fields).stream().map(CrossChecks::plausible).toList();
  }

  /** The fields of several tables, with what one says otherwise than another asked. */
  static List<FoundField> together(List<FoundField> fields) {
    CrossChecks checks = new CrossChecks(whose -> List.of());
    checks.repeated(fields);
    return checks.applied(fields);
  }

  private List<FoundField> applied(List<FoundField> fields) {
    return fields.stream()
        .map(field -> Optional.ofNullable(asked.get(field)).map(field::with).orElse(field))
        .toList();
  }

  /** Rows of the template with the first field of each column; a second one is a contradiction. */
  private Map<String, Map<String, FoundField>> repeated(List<FoundField> fields) {
    Map<String, Map<String, FoundField>> rows = new LinkedHashMap<>();
    for (FoundField field : fields) {
      Map<String, FoundField> row =
          rows.computeIfAbsent(field.rowKey(), any -> new LinkedHashMap<>());
      FoundField before = row.putIfAbsent(field.value().column(), field);
      if (before != null && contradict(before, field)) {
        ask(
            List.of(before, field),
            "The same value stands in "
                + before.cell()
                + " as '"
                + before.words()
                + "' and in "
                + field.cell()
                + " as '"
                + field.words()
                + "'. Say which counts.");
      }
    }
    return rows;
  }

  private static boolean contradict(FoundField one, FoundField other) {
    return !one.cell().equals(other.cell())
        && one.value().state() != Proposed.State.LEFT
        && other.value().state() != Proposed.State.LEFT
        && !one.into().equals("studies")
        && !one.value().text().equals(other.value().text());
  }

  private void check(Map<String, FoundField> row) {
    for (String base : SHARES) {
      share(row, base);
    }
    for (String prefix : List.of("", "defect_length_", "age_", "follow_up_")) {
      order(row, List.of(prefix + "min", prefix + "mean", prefix + "max"));
      order(
          row,
          List.of(prefix + "min", prefix + "q1", prefix + "median", prefix + "q3", prefix + "max"));
    }
  }

  private void share(Map<String, FoundField> row, String base) {
    List<FoundField> parts = new ArrayList<>();
    Optional<FoundField> count = part(row, base.isEmpty() ? "events" : base, parts);
    Optional<FoundField> total = part(row, base.isEmpty() ? "total" : base + "_of", parts);
    Optional<FoundField> percent = part(row, base.isEmpty() ? "percent" : base + "_percent", parts);
    int decimals = percent.map(field -> decimals(field.value().text())).orElse(0);
    PrintedValue.Share share =
        new PrintedValue.Share(number(count), number(total), number(percent), decimals);
    if (parts.size() > 1 && !agrees(share, sizes.apply(parts.get(0).whose()))) {
      ask(
          parts,
          "Count, total and percentage, in "
              + places(parts)
              + ", do not go together. Check them against the paper.");
    }
  }

  /** Whether a share goes together, by itself and with one of the sizes of its group. */
  private static boolean agrees(PrintedValue.Share share, List<Double> sizes) {
    return sizes.isEmpty()
        ? share.agrees(OptionalDouble.empty())
        : sizes.stream().anyMatch(size -> share.agrees(OptionalDouble.of(size)));
  }

  private static Optional<FoundField> part(
      Map<String, FoundField> row, String column, List<FoundField> parts) {
    Optional<FoundField> found =
        Optional.ofNullable(row.get(column))
            .filter(field -> number(Optional.of(field)).isPresent());
    found.ifPresent(parts::add);
    return found;
  }

  private static int decimals(String number) {
    return number.indexOf('.') < 0 ? 0 : number.length() - number.indexOf('.') - 1;
  }

  private void order(Map<String, FoundField> row, List<String> ascending) {
    Optional<FoundField> before = Optional.empty();
    for (String column : ascending) {
      Optional<FoundField> next =
          Optional.ofNullable(row.get(column))
              .filter(field -> number(Optional.of(field)).isPresent());
      if (before.isPresent()
          && next.isPresent()
          && before.get().value().unit().equals(next.get().value().unit())
          && number(before).orElseThrow() > number(next).orElseThrow()) {
        List<FoundField> both = List.of(before.get(), next.get());
        ask(
            both,
            before.get().value().column()
                + " is larger than "
                + column
                + ", in "
                + places(both)
                + ". Check them against the paper.");
      }
      before = next.isPresent() ? next : before;
    }
  }

  private static FoundField plausible(FoundField field) {
    OptionalDouble number = number(Optional.of(field));
    String column = field.value().column();
    boolean spread = column.endsWith("_sd") || column.endsWith("_se") || column.endsWith("_n");
    if (number.isEmpty() || spread) {
      return field;
    }
    Optional<Unit> unit = field.value().unit();
    boolean tooLong =
        column.startsWith("defect_length")
            && unit.filter(
                    u ->
                        u.dimension() == Unit.Dimension.LENGTH
                            && u.to(Unit.CENTIMETRES, number.getAsDouble()) > LONGEST_DEFECT_CM)
                .isPresent();
    boolean tooOld =
        column.startsWith("age")
            && unit.filter(
                    u ->
                        u.dimension() == Unit.Dimension.TIME
                            && u.to(Unit.YEARS, number.getAsDouble()) > OLDEST)
                .isPresent();
    return tooLong || tooOld
        ? field.with(
            field
                .value()
                .askedBecause(
                    Doubt.UNIT,
                    "Found '"
                        + field.words()
                        + "' for "
                        + column.replace('_', ' ')
                        + " in "
                        + unit.orElseThrow().symbol()
                        + ", more than there can be. Check the unit."))
        : field;
  }

  private static OptionalDouble number(Optional<FoundField> field) {
    String text = field.map(f -> f.value().text()).orElse("");
    return text.matches("-?\\d+(\\.\\d+)?")
        ? OptionalDouble.of(Double.parseDouble(text))
        : OptionalDouble.empty();
  }

  private static String places(List<FoundField> fields) {
    return String.join(" and ", fields.stream().map(FoundField::cell).distinct().toList());
  }

  private void ask(List<FoundField> which, String why) {
    which.forEach(field -> asked.put(field, field.value().askedBecause(Doubt.CONTRADICTION, why)));
  }
}
