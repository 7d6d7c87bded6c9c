package gapwise.server.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.server.testing.RunningServer;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The description of the API against the API that is there. */
class OpenApiTest {
  private static final Set<String> METHODS = Set.of("GET", "POST", "PUT", "DELETE", "PATCH");
  @TempDir static Path folder;
  private static RunningServer running;
  private static JsonNode document;

  @BeforeAll
  static void start() throws Exception {
    running = RunningServer.withStudies(folder);
    document = JsonMapper.builder().build().readTree(running.get("/api/v1/openapi.json").body());
  }

  @AfterAll
  static void stop() {
    running.close();
  }

  @Test
  void everyRouteStandsInTheDocumentAndTheDocumentHasNoOther() {
    Set<String> answered =
        running.server().routes().stream()
            .filter(route -> route.contains("/api/"))
            .filter(route -> METHODS.contains(route.substring(0, route.indexOf(' '))))
            .collect(Collectors.toCollection(TreeSet::new));
    assertTrue(answered.size() >= 10, "routes were found: " + answered);
    assertEquals(described(), answered);
  }

  /** The kinds of OpenAPI 3.1 (Security Scheme Object): a bearer token, or a cookie. */
  @Test
  void theDocumentSaysHowAProgramSignsIn() {
    JsonNode token = document.at("/components/securitySchemes/token");
    assertEquals("http", token.path("type").asText());
    assertEquals("bearer", token.path("scheme").asText());
    JsonNode session = document.at("/components/securitySchemes/session");
    assertEquals("apiKey", session.path("type").asText());
    assertEquals("gapwise-session", session.path("name").asText());
    assertEquals(3, document.get("security").size());
  }

  private static Set<String> described() {
    Set<String> described = new TreeSet<>();
    Iterator<Map.Entry<String, JsonNode>> paths = document.get("paths").fields();
    while (paths.hasNext()) {
      Map.Entry<String, JsonNode> path = paths.next();
      path.getValue()
          .fieldNames()
          .forEachRemaining(
              method -> described.add(method.toUpperCase(Locale.ROOT) + " " + path.getKey()));
    }
    return described;
  }

  @Test
  void everyEntryAnswersAsItSays() throws Exception {
    for (String entry : described()) {
      String path = entry.substring(entry.indexOf(' ') + 1);
      String method = entry.substring(0, entry.indexOf(' ')).toLowerCase(Locale.ROOT);
      JsonNode responses = document.at("/paths/" + path.replace("/", "~1") + "/" + method);
      HttpResponse<String> answer = method.equals("get") ? read(path) : write(path, responses);
      String status = String.valueOf(answer.statusCode());
      JsonNode told = responses.path("responses").path(status);
      assertTrue(told.isObject(), entry + " answered " + status + ": " + answer.body());
      if (told.has("content")) {
        String type = told.get("content").fieldNames().next();
        String found = answer.headers().firstValue("Content-Type").orElse("");
        assertTrue(found.startsWith(type), entry + " answered " + found);
      }
    }
  }

  private static HttpResponse<String> read(String path) throws Exception {
    String real = path.replace("{id}", "invented-03");
    boolean figure = !path.contains("{id}") && path.matches(".*\\.(svg|png|csv|json|txt|ris|zip)");
    return running.get(figure ? real + "?outcome=union" : real);
  }

  private static HttpResponse<String> write(String path, JsonNode entry) throws Exception {
    JsonNode json = entry.at("/requestBody/content/application~1json/example");
    if (json.isObject()) {
      return running.send(running.request(path).POST(BodyPublishers.ofString(json.toString())));
    }
    String form =
        "--x\r\nContent-Disposition: form-data; name=\"who\"\r\n\r\nreviewer\r\n--x\r\n"
            + "Content-Disposition: form-data; name=\"files\"; filename=\"studies.csv\"\r\n\r\n"
            + "study\r\n--x--\r\n";
    return running.send(
        running
            .request(path)
            .header("Content-Type", "multipart/form-data; boundary=x")
            .POST(BodyPublishers.ofString(form)));
  }
}
