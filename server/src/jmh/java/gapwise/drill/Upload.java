package gapwise.drill;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.Map;

/** An import over HTTP, from handing in to its end. */
final class Upload {
  private static final String BOUNDARY = "drill-5d1f7c";
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private Upload() {}

  /** Whether the server says that all of it is stored. */
  static boolean stored(HttpClient client, int port, Map<String, String> files)
      throws IOException, InterruptedException {
    String root = "http://127.0.0.1:" + port;
    HttpResponse<String> taken =
        client.send(
            HttpRequest.newBuilder(URI.create(root + "/api/v1/imports"))
                .header("Content-Type", "multipart/form-data; boundary=" + BOUNDARY)
                .POST(HttpRequest.BodyPublishers.ofString(body(files)))
                .build(),
            HttpResponse.BodyHandlers.ofString());
    if (taken.statusCode() != 202) {
      return false;
    }
    URI job = URI.create(root + taken.headers().firstValue("Location").orElseThrow());
    while (true) {
      JsonNode state =
          JSON.readTree(
              client
                  .send(HttpRequest.newBuilder(job).build(), HttpResponse.BodyHandlers.ofString())
                  .body());
      if (!state.path("state").asText().equals("reading")) {
        return state.path("state").asText().equals("done");
      }
      Thread.sleep(20);
    }
  }

  private static String body(Map<String, String> files) {
    StringBuilder body = new StringBuilder();
    body.append("--").append(BOUNDARY).append("\r\n");
    body.append("Content-Disposition: form-data; name=\"who\"\r\n\r\ndrill\r\n");
    body.append("--").append(BOUNDARY).append("\r\n");
    body.append("Content-Disposition: form-data; name=\"replace\"\r\n\r\nall\r\n");
    files.forEach(
        (name, content) -> {
          body.append("--").append(BOUNDARY).append("\r\n");
          body.append("Content-Disposition: form-data; name=\"files\"; filename=\"");
          body.append(name).append("\"\r\n\r\n").append(content).append("\r\n");
        });
    return body.append("--").append(BOUNDARY).append("--\r\n").toString();
  }
}
