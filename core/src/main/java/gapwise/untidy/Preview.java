package gapwise.untidy;

import gapwise.printed.Doubt;
import gapwise.printed.Proposed;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What a reading found, before anything is accepted.
 *
 * @param fields values with their places, taken, asked or left
 * @param apart texts that are no values, with the reason
 * @param notes comments, colours and other things seen, as sentences; never data
 * @param mappings what is proposed for the columns, a mapping for each table
 * @param headings the words over those columns as they stand in the file, a list for each table
 */
public record Preview(
    List<FoundField> fields,
    List<SetApart> apart,
    List<String> notes,
    List<Mapping> mappings,
    List<List<String>> headings) {
  public Preview {
    fields = List.copyOf(fields);
    apart = List.copyOf(apart);
    notes = List.copyOf(notes);
    mappings = List.copyOf(mappings);
    headings = headings.stream().map(List::copyOf).toList();
  }

  /** The fields that a person must decide, by kind of doubt. */
  public Map<Doubt, List<FoundField>> questions() {
    Map<Doubt, List<FoundField>> byKind = new EnumMap<>(Doubt.class);
    for (FoundField field : fields) {
      if (field.value().state() == Proposed.State.ASKED) {
        byKind
            .computeIfAbsent(
                field.value().doubt().orElse(Doubt.WORD), any -> new java.util.ArrayList<>())
            .add(field);
      }
    }
    return byKind;
  }

  /** The fields that may be taken. */
  public List<FoundField> taken() {
    return fields.stream().filter(one -> one.value().state() == Proposed.State.TAKEN).toList();
  }
}
