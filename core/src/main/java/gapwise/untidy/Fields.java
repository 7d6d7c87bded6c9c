package gapwise.untidy;

import gapwise.printed.Printed;
import gapwise.printed.PrintedValue;
import gapwise.printed.Proposed;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Collects the fields of one table, and the sizes of its groups. */
final class Fields {
  private final String sheet;
  private final List<FoundField> all = new ArrayList<>();
  private final Map<String, List<Double>> sizes = new HashMap<>();

  Fields(String sheet) {
    this.sheet = sheet;
  }

  void add(String into, FoundField.Whose whose, Identity.Taken taken, List<Proposed> values) {
    for (Proposed value : values) {
      add(
          new FoundField(
              into,
              whose,
              Optional.empty(),
              FoundField.Row.WHOLE,
              Remarks.of(taken.cell(), value),
              sheet,
              taken.cell().id(),
              taken.carried(),
              taken.cell().text()));
    }
  }

  void add(FoundField field) {
    all.add(field);
  }

  /** Says how many a group has; patients and limbs may be told both. */
  void size(FoundField.Whose whose, double people) {
    sizes.computeIfAbsent(key(whose), any -> new ArrayList<>()).add(people);
  }

  /** Forgets the sizes of a group, before those of another part of it. */
  void noSize(FoundField.Whose whose) {
    sizes.remove(key(whose));
  }

  /** How many a group has, in each of the ways in which that is told. */
  List<Double> sizes(FoundField.Whose whose) {
    return sizes.getOrDefault(key(whose), List.of());
  }

  /**
   * The size of a group that goes with a text: of several the one with which its count and
   * percentage agree, else the largest.
   */
  OptionalDouble size(FoundField.Whose whose, String text) {
    List<Double> known = sizes(whose);
    PrintedValue value = Printed.read(text);
    for (double size : known) {
      if (agrees(value, OptionalDouble.of(size))) {
        return OptionalDouble.of(size);
      }
    }
    return known.stream().mapToDouble(Double::doubleValue).max();
  }

  private static boolean agrees(PrintedValue value, OptionalDouble size) {
    if (value instanceof PrintedValue.Share share) {
      return share.percent().isPresent() && share.count().isPresent() && share.agrees(size);
    }
    if (value instanceof PrintedValue.Summary summary
        && summary.centre().isPresent()
        && summary.deviation().isPresent()) {
      OptionalDouble percent = OptionalDouble.of(summary.deviation().get().value());
      return new PrintedValue.Share(summary.centre(), OptionalDouble.empty(), percent, 0)
          .agrees(size);
    }
    return false;
  }

  private static String key(FoundField.Whose whose) {
    return whose.study() + "|" + whose.arm().orElse("");
  }

  List<FoundField> all() {
    return all;
  }

  String sheet() {
    return sheet;
  }
}
