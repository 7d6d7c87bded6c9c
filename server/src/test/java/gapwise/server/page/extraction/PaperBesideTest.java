package gapwise.server.page.extraction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.page.desk.InventedPaper;
import gapwise.server.testing.RunningServer;
import java.io.ByteArrayOutputStream;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** That a person who settles has the page of the paper beside, the number marked. */
@Timeout(180)
class PaperBesideTest {
  private static final Pattern PART = Pattern.compile("hx-get=\"(/papers/[^\"]+)\"");

  @TempDir Path folder;

  private static void paper(RunningServer running, String form, Path file) throws Exception {
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    body.writeBytes(
        ("--edge\r\nContent-Disposition: form-data; name=\"paper\"; filename=\"a.pdf\"\r\n"
                + "Content-Type: application/pdf\r\n\r\n")
            .getBytes(StandardCharsets.US_ASCII));
    body.writeBytes(Files.readAllBytes(file));
    body.writeBytes("\r\n--edge--\r\n".getBytes(StandardCharsets.US_ASCII));
    HttpResponse<String> put =
        running.send(
            running
                .request(form + "/paper")
                .header("Content-Type", "multipart/form-data; boundary=edge")
                .POST(BodyPublishers.ofByteArray(body.toByteArray())));
    assertEquals(303, put.statusCode(), put.body());
  }

  @Test
  void thePageOfThePaperStandsBesideADifferenceWithTheNumberMarked() throws Exception {
    try (RunningServer running = RunningServer.empty(folder.resolve("home"))) {
      TwoReaders.open(running);
      String form = TwoReaders.form(running, "AB");
      paper(running, form, InventedPaper.write(folder.resolve("invented.pdf")));
      TwoReaders.extract(running, "AB", Map.of());
      HttpResponse<String> read =
          TwoReaders.post(
              running,
              form + "/read",
              "cell",
              "c.3.events",
              "words",
              "9",
              "as",
              "9",
              "page",
              "1",
              "box",
              "100,200,120,212");
      assertEquals(200, read.statusCode(), read.body());
      assertEquals(303, TwoReaders.handIn(running, form, "AB").statusCode());
      TwoReaders.extract(running, "CD", Map.of("c.3.events", "8"));
      TwoReaders.begin(running, "EF");
      String page = running.get(TwoReaders.PAPER + "/settle?who=EF").body();
      assertTrue(TwoReaders.plain(page).contains("Page 1 of the paper, marked"), page);
      Matcher part = PART.matcher(page);
      assertTrue(part.find(), page);
      HttpResponse<String> beside = running.get(part.group(1));
      assertEquals(200, beside.statusCode(), beside.body());
      assertTrue(beside.body().contains("class=\"marked\""), beside.body());
    }
  }
}
