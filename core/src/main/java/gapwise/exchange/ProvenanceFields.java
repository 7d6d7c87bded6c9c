package gapwise.exchange;

import gapwise.evidence.Provenance;
import gapwise.evidence.Reading;
import gapwise.exchange.form.ListForm;
import gapwise.exchange.form.ReadingForm;
import java.util.List;
import java.util.Optional;

/** The columns at the end of each sheet: where it stands in the paper, its words, a note. */
final class ProvenanceFields {
  private static final Field<String> PLACE =
      Field.text("place", "Place in the paper", "Where the numbers of the row stand.")
          .like("Table 2");
  private static final Field<String> WORDS =
      Field.text("words", "Words of the paper", "The sentence or table entry as printed.");
  static final Field<List<Reading>> READINGS =
      Field.of(
          "readings",
          "Places on pages",
          "Written by the program: on which page, in which box and in which words each number of the"
              + " row stands. Leave it as it is.",
          new ListForm<>(new ReadingForm()));
  static final Field<String> NOTE =
      Field.text("note", "Note", "Anything that the columns cannot say.");

  private ProvenanceFields() {}

  static List<Field<?>> fields() {
    return List.of(PLACE, WORDS, READINGS, NOTE);
  }

  static Provenance read(RowReader row) {
    return new Provenance(row.get(PLACE), row.get(WORDS), row.get(READINGS).orElse(List.of()));
  }

  static void write(RowWriter row, Provenance provenance, Optional<String> note) {
    row.put(PLACE, provenance.place());
    row.put(WORDS, provenance.words());
    if (!provenance.readings().isEmpty()) {
      row.put(READINGS, provenance.readings());
    }
    row.put(NOTE, note);
  }
}
