package gapwise.server.testing;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URLEncoder;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Forms as a browser without script sends them, to a server that is running. */
public final class Forms {
  private static final String BOUNDARY = "----edge-of-a-part";

  private final RunningServer running;

  public Forms(RunningServer running) {
    this.running = running;
  }

  /** Sends fields, names and values by turns. */
  public HttpResponse<String> post(String path, String... fields)
      throws IOException, InterruptedException {
    StringBuilder body = new StringBuilder();
    for (int at = 0; at < fields.length; at += 2) {
      body.append(at == 0 ? "" : "&")
          .append(fields[at])
          .append('=')
          .append(URLEncoder.encode(fields[at + 1], StandardCharsets.UTF_8));
    }
    return running.send(
        running
            .request(path)
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(BodyPublishers.ofString(body.toString())));
  }

  /** Sends one file in a field, and who sends it. */
  public HttpResponse<String> upload(
      String path, String field, String name, byte[] content, String who)
      throws IOException, InterruptedException {
    return upload(path, List.of(new Sent(field, name, content)), who);
  }

  /** Sends files, and who sends them. */
  public HttpResponse<String> upload(String path, List<Sent> files, String who)
      throws IOException, InterruptedException {
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    body.writeBytes(part("name=\"who\"\r\n\r\n" + who));
    for (Sent file : files) {
      body.writeBytes(
          part(
              "name=\""
                  + file.field()
                  + "\"; filename=\""
                  + file.name()
                  + "\"\r\nContent-Type: application/octet-stream\r\n\r\n"));
      body.writeBytes(file.content());
    }
    body.writeBytes(("\r\n--" + BOUNDARY + "--\r\n").getBytes(StandardCharsets.US_ASCII));
    return running.send(
        running
            .request(path)
            .header("Content-Type", "multipart/form-data; boundary=" + BOUNDARY)
            .POST(BodyPublishers.ofByteArray(body.toByteArray())));
  }

  private static byte[] part(String head) {
    return ("\r\n--" + BOUNDARY + "\r\nContent-Disposition: form-data; " + head)
        .getBytes(StandardCharsets.UTF_8);
  }

  /** A file as it is sent. */
  @SuppressWarnings("ArrayRecordComponent") // sent once, never compared
  public record Sent(String field, String name, byte[] content) {}
}
