package gapwise.server.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.problem.Problem;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;

/**
 * What went wrong with a request to the API, as RFC 9457 problem details; the extension {@code
 * problems} lists every reason with its place, code and sentence.
 */
public final class ProblemDetails {
  /** The kind of content; JSON is UTF-8 whatever the request says of itself. */
  public static final String TYPE = "application/problem+json";

  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  private ProblemDetails() {}

  /** Answers with a status, a sentence and, where there are any, every reason. */
  public static void answer(
      Context context, HttpStatus status, String detail, List<Problem> problems) {
    context.status(status).contentType(TYPE).result(bytes(status, detail, problems));
  }

  /** The details themselves, in UTF-8. */
  public static byte[] bytes(HttpStatus status, String detail, List<Problem> problems) {
    ObjectNode body = MAPPER.createObjectNode();
    body.put("type", "about:blank");
    body.put("title", status.getMessage());
    body.put("status", status.getCode());
    body.put("detail", detail);
    if (!problems.isEmpty()) {
      ArrayNode list = body.putArray("problems");
      for (Problem problem : problems) {
        list.addObject()
            .put("where", problem.where())
            .put("code", problem.code())
            .put("message", problem.message());
      }
    }
    try {
      return MAPPER.writeValueAsBytes(body);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a list of problems can always be written", e);
    }
  }
}
