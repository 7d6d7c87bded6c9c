package gapwise.untidy;

import gapwise.evidence.unit.Unit;
import gapwise.printed.Printed;
import gapwise.printed.PrintedValue;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Bands of length, such as "4-8 cm" or "> 8 cm", in place of a quantity. */
final class Bands {
  /**
   * A band in centimetres.
   *
   * @param from empty where it has no lower end
   * @param to empty where it has no upper end
   */
  record Band(OptionalDouble from, OptionalDouble to) {}

  private Bands() {}

  /** The band that a text names; empty where it is none, or has no unit of length. */
  static Optional<Band> of(String text) {
    String plain =
        text.replaceFirst("(?i)^(.*\\d.*?) ?(?:and|or) (?:more|longer|over|above)$", "> $1")
            .replaceFirst("(?i)^(.*\\d.*?) ?(?:and|or) (?:less|shorter|under)$", "< $1");
    PrintedValue value = Printed.read(plain);
    if (value instanceof PrintedValue.Amount amount && amount.bound() != PrintedValue.Bound.EXACT) {
      OptionalDouble end = centimetres(amount.value(), amount.unit());
      OptionalDouble open = OptionalDouble.empty();
      boolean below = amount.bound() == PrintedValue.Bound.BELOW;
      return end.isEmpty() || amount.bound() == PrintedValue.Bound.ABOUT
          ? Optional.empty()
          : Optional.of(below ? new Band(open, end) : new Band(end, open));
    }
    if (value instanceof PrintedValue.Summary summary
        && summary.centre().isEmpty()
        && summary.limits().size() == 1) {
      PrintedValue.Limits limits = summary.limits().get(0);
      OptionalDouble from = centimetres(limits.low(), summary.unit());
      OptionalDouble to = centimetres(limits.high(), summary.unit());
      return from.isEmpty() || to.isEmpty() ? Optional.empty() : Optional.of(new Band(from, to));
    }
    return Optional.empty();
  }

  private static OptionalDouble centimetres(double value, Optional<Unit> unit) {
    return unit.filter(one -> one.dimension() == Unit.Dimension.LENGTH)
        .map(one -> OptionalDouble.of(one.to(Unit.CENTIMETRES, value)))
        .orElse(OptionalDouble.empty());
  }

  /**
   * The table with its column of lengths understood as one of subgroups, where its cells are bands
   * and at least one is open at an end: a range of lengths is never open.
   */
  static Logical named(Logical table) {
    if (table.turned()) {
      return table;
    }
    List<Variable> variables = new ArrayList<>();
    for (Variable variable : table.variables()) {
      variables.add(
          variable.target().equals("defect-length") && holdsBands(table, variable)
              ? variable.with(
                  new Heading(
                      variable.heading().words(),
                      variable.heading().said(),
                      Optional.of(new Concept("subgroup", 1, List.of(), List.of()))))
              : variable);
    }
    return table.with(variables);
  }

  private static boolean holdsBands(Logical table, Variable variable) {
    int seen = 0;
    int bands = 0;
    int open = 0;
    for (int entity = 0; entity < table.entities().size(); entity++) {
      Optional<GridCell> cell = table.cell(entity, variable);
      if (cell.isPresent()) {
        String unit = variable.heading().said().unit().map(one -> " " + one.symbol()).orElse("");
        Optional<Band> band = of(cell.get().text()).or(() -> of(cell.get().text() + unit));
        seen++;
        bands += band.isPresent() ? 1 : 0;
        open += band.filter(b -> b.from().isEmpty() || b.to().isEmpty()).isPresent() ? 1 : 0;
      }
    }
    return seen > 1 && bands == seen && open > 0;
  }
}
