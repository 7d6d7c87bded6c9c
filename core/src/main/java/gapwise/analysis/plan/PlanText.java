package gapwise.analysis.plan;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;

/** Text to JSON; a field given twice or text after the end is wrong, and so is too much of it. */
public final class PlanText {
  private static final JsonFactory TOKENS = new JsonFactory();

  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private PlanText() {}

  /**
   * Reads.
   *
   * @throws WrongInputException if it is no JSON, or {@link PlanSize} finds too much of it
   */
  public static JsonNode parse(String text) {
    String json = text.startsWith("\uFEFF") ? text.substring(1) : text;
    try (JsonParser tokens = TOKENS.createParser(json)) {
      PlanSize.check(tokens);
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
    } catch (IOException e) {
      throw new UncheckedIOException("a text in memory cannot be read", e);
    }
  }
}
