package gapwise.drill;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Map;

/** An import over HTTP, from handing in to its end. */
public final class Upload {
  private static final String BOUNDARY = "drill-5d1f7c";
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private Upload() {}

  /** Whether the server says that all of it is stored. */
  static boolean stored(HttpClient client, int port, Map<String, String> files)
      throws IOException, InterruptedException {
    return settled(client, port, files, List.of("all")).path("state").asText().equals("done");
  }

  /**
   * What became of it, as the server tells it; without a state where it was not even taken, as when
   * the server is busy.
   *
   * @param replace keys of the changes that may replace what stands in the base
   */
  public static JsonNode settled(
      HttpClient client, int port, Map<String, String> files, List<String> replace)
      throws IOException, InterruptedException {
    String root = "http://127.0.0.1:" + port;
    HttpResponse<String> taken =
        client.send(
            HttpRequest.newBuilder(URI.create(root + "/api/v1/imports"))
                .header("Content-Type", "multipart/form-data; boundary=" + BOUNDARY)
                .POST(HttpRequest.BodyPublishers.ofString(body(files, replace)))
                .build(),
            HttpResponse.BodyHandlers.ofString());
    if (taken.statusCode() != 202) {
      return JSON.createObjectNode();
    }
    URI job = URI.create(root + taken.headers().firstValue("Location").orElseThrow());
    while (true) {
      JsonNode state =
          JSON.readTree(
              client
                  .send(HttpRequest.newBuilder(job).build(), HttpResponse.BodyHandlers.ofString())
                  .body());
      if (!state.path("state").asText().equals("reading")) {
        return state;
      }
      Thread.sleep(20);
    }
  }

  private static String body(Map<String, String> files, List<String> replace) {
    StringBuilder body = new StringBuilder();
    body.append("--").append(BOUNDARY).append("\r\n");
    body.append("Content-Disposition: form-data; name=\"who\"\r\n\r\ndrill\r\n");
    for (String key : replace) {
      body.append("--").append(BOUNDARY).append("\r\n");
      body.append("Content-Disposition: form-data; name=\"replace\"\r\n\r\n");
      body.append(key).append("\r\n");
    }
    files.forEach(
        (name, content) -> {
          body.append("--").append(BOUNDARY).append("\r\n");
          body.append("Content-Disposition: form-data; name=\"files\"; filename=\"");
          body.append(name).append("\"\r\n\r\n").append(content).append("\r\n");
        });
    return body.append("--").append(BOUNDARY).append("--\r\n").toString();
  }
}
