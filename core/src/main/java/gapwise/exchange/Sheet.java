package gapwise.exchange;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * One sheet of the template.
 *
 * @param name name of the sheet, and of the CSV file before ".csv"
 * @param description what a row is
 * @param fields the columns from left to right, names all different
 */
record Sheet(String name, String description, List<Field<?>> fields) {
  Sheet {
    fields = List.copyOf(fields);
    Set<String> names = new HashSet<>();
    for (Field<?> field : fields) {
      if (!names.add(field.name())) {
        throw new IllegalArgumentException("sheet " + name + " has two columns " + field.name());
      }
    }
  }

  List<String> names() {
    return fields.stream().map(Field::name).toList();
  }

  Optional<Field<?>> field(String fieldName) {
    return fields.stream()
        .<Field<?>>map(f -> f)
        .filter(f -> f.name().equals(fieldName))
        .findFirst();
  }

  /** A name as people type it in a header: without regard to case, blanks and hyphens. */
  static String folded(String typed) {
    return typed.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s-]+", "_");
  }
}
