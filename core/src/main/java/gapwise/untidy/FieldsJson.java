package gapwise.untidy;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.printed.Proposed;
import java.math.BigDecimal;
import java.util.Locale;
import java.util.Set;

/** A preview as JSON: the fields one by one, what is set apart, notes, and questions. */
public final class FieldsJson {
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
  private static final Set<String> WORDS =
      Set.of("patient", "note", "doi", "pmid", "title", "first_author");

  private FieldsJson() {}

  /** All of a preview. */
  public static ObjectNode of(Preview preview) {
    ObjectNode all = NODES.objectNode();
    ArrayNode fields = all.putArray("fields");
    preview.fields().forEach(field -> fields.add(of(field)));
    ArrayNode apart = all.putArray("apart");
    for (SetApart one : preview.apart()) {
      apart
          .addObject()
          .put("sheet", one.sheet())
          .put("cell", one.cell())
          .put("words", one.words())
          .put("reason", one.reason());
    }
    ArrayNode notes = all.putArray("notes");
    preview.notes().forEach(notes::add);
    ArrayNode mappings = all.putArray("mappings");
    preview.mappings().forEach(mapping -> mappings.add(mapping.toTree()));
    return all;
  }

  private static ObjectNode of(FoundField field) {
    Proposed value = field.value();
    ObjectNode node = NODES.objectNode();
    node.put("into", field.into()).put("study", field.whose().study());
    field.whose().arm().ifPresent(arm -> node.put("arm", arm));
    field.whose().patient().ifPresent(patient -> node.put("patient", patient));
    field.outcome().ifPresent(outcome -> node.put("outcome", outcome));
    field
        .row()
        .timePoint()
        .ifPresent(
            at -> node.put("time_point", at.value()).put("time_point_unit", at.unit().symbol()));
    field.row().subgroup().ifPresent(subgroup -> node.put("subgroup", subgroup));
    field
        .row()
        .subgroup()
        .flatMap(Bands::of)
        .ifPresent(
            band -> {
              band.from().ifPresent(from -> node.put("defect_from_cm", from));
              band.to().ifPresent(to -> node.put("defect_to_cm", to));
            });
    node.put("column", value.column());
    put(node, value);
    value
        .unit()
        .ifPresentOrElse(unit -> node.put("unit", unit.symbol()), () -> node.putNull("unit"));
    node.put("state", value.state().name().toLowerCase(Locale.ROOT));
    node.put("sheet", field.sheet()).put("cell", field.cell()).put("words", field.words());
    field.carriedFrom().ifPresent(from -> node.put("carried_from", from));
    value.doubt().ifPresent(doubt -> node.put("doubt", doubt.label()));
    if (!value.why().isEmpty()) {
      node.put("why", value.why());
    }
    return node;
  }

  private static void put(ObjectNode node, Proposed value) {
    if (value.text().isEmpty()) {
      node.putNull("value");
    } else if (!WORDS.contains(value.column())
        && value.text().matches("-?\\d{1,15}(\\.\\d{1,15})?")) {
      node.put("value", new BigDecimal(value.text()));
    } else {
      node.put("value", value.text());
    }
  }
}
