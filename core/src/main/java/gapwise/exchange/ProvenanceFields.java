package gapwise.exchange;

import gapwise.evidence.Provenance;
import java.util.List;
import java.util.Optional;

/** The columns at the end of each sheet: where it stands in the paper, its words, a note. */
final class ProvenanceFields {
  private static final Field<String> PLACE =
      Field.text("place", "Place in the paper", "Where the numbers of the row stand.")
          .like("Table 2");
  private static final Field<String> WORDS =
      Field.text("words", "Words of the paper", "The sentence or table entry as printed.");
  static final Field<String> NOTE =
      Field.text("note", "Note", "Anything that the columns cannot say.");

  private ProvenanceFields() {}

  static List<Field<?>> fields() {
    return List.of(PLACE, WORDS, NOTE);
  }

  static Provenance read(RowReader row) {
    return new Provenance(row.get(PLACE), row.get(WORDS));
  }

  static void write(RowWriter row, Provenance provenance, Optional<String> note) {
    row.put(PLACE, provenance.place());
    row.put(WORDS, provenance.words());
    row.put(NOTE, note);
  }
}
