package gapwise.server.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.server.testing.RunningServer;
import java.io.ByteArrayOutputStream;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Forms and bodies that are written wrongly are the sender's fault, and are told in words. */
@Timeout(120)
class BadFormsTest {
  private static final String FORM = "multipart/form-data; boundary=edge";
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  @TempDir static Path folder;
  private static RunningServer running;

  @BeforeAll
  static void start() {
    running = RunningServer.withStudies(folder);
  }

  @AfterAll
  static void stop() {
    running.close();
  }

  private static String part(String name, String file, String content) {
    return "--edge\r\nContent-Disposition: form-data; name=\""
        + name
        + "\""
        + (file.isEmpty() ? "" : "; filename=\"" + file + "\"")
        + "\r\n\r\n"
        + content
        + "\r\n";
  }

  private static HttpResponse<String> post(String path, String type, String body) throws Exception {
    return running.send(
        running
            .request(path)
            .header("Content-Type", type)
            .POST(BodyPublishers.ofByteArray(body.getBytes(StandardCharsets.UTF_8))));
  }

  /** Refused with words, to people and programs; the connection serves the next request. */
  private static void refused(int status, String type, String body, String words) throws Exception {
    for (String path : List.of("/import", "/api/v1/imports")) {
      HttpResponse<String> answer = post(path, type, body);
      assertEquals(status, answer.statusCode(), path + ": " + answer.body());
      assertTrue(answer.body().contains(words), answer.body());
      assertEquals(200, running.get("/method").statusCode(), "the next request after " + path);
    }
    try (Stream<Path> left = Files.list(folder.resolve("uploads"))) {
      assertEquals( // folders are those of imports that were taken
          List.of(),
          left.filter(Files::isRegularFile).toList(),
          "nothing stays of a form that was refused");
    }
  }

  @Test
  void aFormThatIsCutOffIsToldToBe() throws Exception {
    String whole = part("files", "studies.csv", "study_id,title\r\nA,B\r\n");
    refused(400, FORM, whole, "cut off");
    refused(400, FORM, whole.substring(0, 40), "cut off");
    refused(400, FORM, "", "cut off");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "multipart/form-data",
        "multipart/form-data; boundary=",
        "multipart/form-data; boundary=other"
      })
  void aFormWithoutItsBoundaryIsToldToBe(String type) throws Exception {
    refused(400, type, part("who", "", "tester") + "--edge--\r\n", "boundary");
  }

  @Test
  void aNameOfAFileThatNoFileCanHaveIsTheSendersFault() throws Exception {
    refused(400, FORM, part("files", "a\u0000b.csv", "x") + "--edge--\r\n", "cannot be read");
  }

  @Test
  void aFormOfThousandsOfPartsIsTooMuch() throws Exception {
    StringBuilder form = new StringBuilder();
    for (int i = 0; i < 5_000; i++) {
      form.append(part("files", "f" + i + ".csv", "a"));
    }
    refused(413, FORM, form + "--edge--\r\n", "at most 1,000");
  }

  @Test
  void aFieldOfMegabytesIsTooMuch() throws Exception {
    String field = part("who", "", "x".repeat(20_000_000));
    refused(
        413,
        FORM,
        part("files", "studies.csv", "study_id\r\nA\r\n") + field + "--edge--\r\n",
        "200,000 letters");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "text/plain; charset=nosuch",
        "application/json; charset=\"",
        "application/json; charset",
        "application/json; charset=",
        "multipart/form-data; charset=nosuch; boundary=edge"
      })
  void textInAnUnknownCharacterSetIsNotGuessed(String type) throws Exception {
    for (String path : List.of("/api/v1/syntheses", "/api/v1/imports", "/import")) {
      HttpResponse<String> answer = post(path, type, "{}");
      assertEquals(415, answer.statusCode(), path + ": " + answer.body());
      assertTrue(answer.body().contains("Send UTF-8"), answer.body());
    }
  }

  /** Whatever the request says of its own text, problem details are JSON and so UTF-8. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "application/json",
        "application/json; charset=iso-8859-1",
        "text/plain; charset=us-ascii"
      })
  void problemDetailsAreUtf8(String type) throws Exception {
    HttpResponse<byte[]> answer =
        java.net.http.HttpClient.newHttpClient()
            .send(
                running
                    .request("/api/v1/imports/%C3%A9%F0%9F%A6%B4")
                    .header("Content-Type", type)
                    .GET()
                    .build(),
                HttpResponse.BodyHandlers.ofByteArray());
    assertEquals(404, answer.statusCode());
    JsonNode told = MAPPER.readTree(answer.body()); // refuses what is not UTF-8
    assertTrue(told.toString().contains("'é\ud83e\uddb4'"), told.toString());
  }

  @Test
  void nothingMakesReadingPassForWritingOrTheOtherWayRound() throws Exception {
    HttpResponse<String> foreign =
        running.send(
            running
                .request("/import")
                .header("Origin", "http://evil.example")
                .header("X-HTTP-Method-Override", "GET")
                .POST(BodyPublishers.ofString("")));
    assertEquals(403, foreign.statusCode());
    HttpResponse<String> disguised =
        running.send(running.request("/import").header("X-HTTP-Method-Override", "POST").GET());
    assertEquals(400, disguised.statusCode());
    assertTrue(disguised.body().contains("X-HTTP-Method-Override"));
  }

  @Test
  void aPageOfTheSameNameByAnotherProtocolIsForeign() throws Exception {
    String own = "127.0.0.1:" + running.server().port();
    for (String origin : List.of("https://" + own, "file://" + own)) {
      HttpResponse<String> answer =
          running.send(
              running
                  .request("/api/v1/syntheses")
                  .header("Origin", origin)
                  .POST(BodyPublishers.ofString("{}")));
      assertEquals(403, answer.statusCode(), origin);
    }
    HttpResponse<String> two =
        running.send(
            running
                .request("/api/v1/syntheses")
                .header("Origin", "http://" + own)
                .header("Origin", "http://evil.example")
                .POST(BodyPublishers.ofString("{}")));
    assertEquals(403, two.statusCode(), "one of two names is foreign");
  }

  @Test
  void anUploadIsReadWholeThoughItComesInManyChunks() throws Exception {
    ByteArrayOutputStream form = new ByteArrayOutputStream();
    form.writeBytes(part("who", "", "tester").getBytes(StandardCharsets.UTF_8));
    form.writeBytes(
        part("files", "studies.csv", "study_id,title\r\nA," + "é".repeat(100_000) + "\r\n")
            .getBytes(StandardCharsets.UTF_8));
    form.writeBytes("--edge--\r\n".getBytes(StandardCharsets.UTF_8));
    HttpResponse<String> answer =
        running.send(
            running
                .request("/api/v1/imports")
                .header("Content-Type", FORM)
                .POST(
                    BodyPublishers.ofInputStream(
                        () -> new java.io.ByteArrayInputStream(form.toByteArray()))));
    assertEquals(202, answer.statusCode(), answer.body());
  }
}
