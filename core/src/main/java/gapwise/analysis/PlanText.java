package gapwise.analysis;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.List;

/** Text to JSON; a field given twice or text after the end is wrong. */
final class PlanText {
  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private PlanText() {}

  static JsonNode parse(String text) {
    String json = text.startsWith("\uFEFF") ? text.substring(1) : text;
    try {
      return MAPPER.readTree(json);
    } catch (JsonProcessingException e) {
      String place =
          e.getLocation() == null
              ? ""
              : "line " + e.getLocation().getLineNr() + ", column " + e.getLocation().getColumnNr();
      throw new WrongInputException(
          List.of(
              new Problem(
                  place,
                  "not-json",
                  "the plan is not JSON: " + e.getOriginalMessage() + "; correct it there")));
    }
  }
}
