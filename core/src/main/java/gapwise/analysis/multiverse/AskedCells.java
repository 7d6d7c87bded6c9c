package gapwise.analysis.multiverse;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.synthesis.SynthesisTask;
import gapwise.effect.EmptyCells;

/**
 * One way of treating empty cells that a multiverse tries.
 *
 * @param words that tell it among the levels of its choice
 */
record AskedCells(String words, EmptyCells rule) {

  /** What fields of a plan say, or of one entry of {@code vary.emptyCells}. */
  static AskedCells of(JsonNode fields) {
    JsonNode correction = fields.get("continuityCorrection");
    String tables = correction.get("tables").asText();
    String added =
        tables.equals("none") ? "nothing" : correction.get("amount").asText() + " to " + tables;
    return new AskedCells(
        fields.has("uninformativeStudies")
            ? added + ", uninformative " + fields.get("uninformativeStudies").asText()
            : added,
        SynthesisTask.emptyCells(fields));
  }
}
