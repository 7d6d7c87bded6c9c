package gapwise.untidy;

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
  private final Map<String, Double> sizes = new HashMap<>();

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

  void size(FoundField.Whose whose, double people) {
    sizes.put(whose.study() + "|" + whose.arm().orElse(""), people);
  }

  OptionalDouble size(FoundField.Whose whose) {
    Double size = sizes.get(whose.study() + "|" + whose.arm().orElse(""));
    return size == null ? OptionalDouble.empty() : OptionalDouble.of(size);
  }

  List<FoundField> all() {
    return all;
  }

  String sheet() {
    return sheet;
  }
}
