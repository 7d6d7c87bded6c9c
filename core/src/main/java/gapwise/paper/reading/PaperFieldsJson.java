package gapwise.paper.reading;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.paper.Place;
import gapwise.paper.table.Grid;
import gapwise.paper.table.GridCell;
import gapwise.untidy.FieldsJson;
import gapwise.untidy.Preview;
import java.util.List;

/** What a paper holds, as JSON: fields with their places, tables, notes. */
public final class PaperFieldsJson {
  private PaperFieldsJson() {}

  /** All of a reading. */
  public static ObjectNode of(PaperFields paper) {
    Preview preview =
        new Preview(
            paper.fields().stream().map(PaperField::field).toList(),
            paper.apart(),
            paper.notes(),
            List.of(),
            List.of());
    ObjectNode all = FieldsJson.of(preview);
    all.remove("mappings");
    ArrayNode fields = (ArrayNode) all.get("fields");
    for (int i = 0; i < fields.size(); i++) {
      ObjectNode node = (ObjectNode) fields.get(i);
      node.remove("sheet");
      paper.fields().get(i).place().ifPresent(place -> put(node, place));
    }
    ArrayNode grids = all.putArray("grids");
    paper.grids().forEach(grid -> grids.add(grid(grid)));
    return all;
  }

  private static void put(ObjectNode node, Place place) {
    ObjectNode json = place.toJson();
    node.put("page", place.page());
    node.set("boxes", json.get("boxes"));
    node.set("box", json.get("boxes").get(0));
    node.put("words", place.words());
  }

  private static ObjectNode grid(Grid grid) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    Grid.Part part = grid.parts().get(0);
    Place place = new Place(part.page(), List.of(part.box()), grid.caption());
    node.put("page", part.page());
    node.set("box", place.toJson().get("boxes").get(0));
    node.put("caption", grid.caption());
    node.put("header_rows", grid.headerRows());
    ArrayNode rows = node.putArray("rows");
    for (List<GridCell> row : grid.rows()) {
      ArrayNode cells = rows.addArray();
      row.forEach(cell -> cells.add(cell.text()));
    }
    return node;
  }
}
