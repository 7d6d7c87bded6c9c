package gapwise.server.page.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.evidence.Arm;
import gapwise.evidence.Citation;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Method;
import gapwise.server.testing.RunningServer;
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
import org.junit.jupiter.params.provider.CsvSource;

/** Files of references by the form alone. All papers are invented. */
@Timeout(60)
class ReferencesPageTest {
  private static final String TITLE = "Nails for the broken forearm in growing children";
  private static final String RIS =
      "TY  - JOUR\nID  - p1\nAU  - Kell, Bo\nAU  - Ostrow, Ina\nTI  - "
          + TITLE
          + "\nJO  - Imagined Bones\nPY  - 2001\nVL  - 3\nSP  - 44\nEP  - 51\nDO  - 10.5555/paper\n"
          + "AB  - A long tale of forearms.\nER  - \n"
          + "TY  - JOUR\nID  - p2\nPY  - 2003\nER  - \n";
  private static final String MEDLINE =
      "PMID- 90000001\nTI  - "
          + TITLE
          + ".\nFAU - Kell, Bo\nFAU - Ostrow, Ina\nDP  - 2001\nVI  - 3\nPG  - 44-51\n"
          + "JT  - Imagined Bones\nAID - 10.5555/paper [doi]\nPT  - Journal Article\n\n"
          + "PMID- 90000003\nTI  - Wax for gaps of the shin.\nFAU - Brann, Odo\nDP  - 2009\n"
          + "VI  - 8\nPG  - 1-9\nJT  - Imagined Bones\nPT  - Retracted Publication\n"
          + "RIN - Imagined Bones. 2011;10:12. doi: 10.5555/notice\n\n";

  @TempDir static Path folder;
  private static RunningServer running;

  @BeforeAll
  static void start() {
    Citation citation =
        Citation.with(TITLE)
            .authors("Kell, B.; Ostrow, I.")
            .year(2001)
            .journal("Imagined Bones")
            .volume("3")
            .pages("44-51")
            .build();
    Arm arm = Arm.with("A", MethodUsed.of(Method.of("autograft"))).build();
    running =
        RunningServer.with(
            folder,
            List.of(Study.with("kell-2001", citation).invented(true).arms(List.of(arm)).build()));
  }

  @AfterAll
  static void stop() {
    running.close();
  }

  private static String part(String name, String file, String content) {
    return "--edge\r\nContent-Disposition: form-data; name=\""
        + name
        + "\"; filename=\""
        + file
        + "\"\r\n\r\n"
        + content
        + "\r\n";
  }

  private static HttpResponse<String> post(String parts) throws Exception {
    byte[] form = (parts + "--edge--\r\n").getBytes(StandardCharsets.UTF_8);
    return running.send(
        running
            .request("/references")
            .header("Content-Type", "multipart/form-data; boundary=edge")
            .POST(BodyPublishers.ofByteArray(form)));
  }

  /** The address of a load, once it is settled. */
  private static String settled(String parts) throws Exception {
    HttpResponse<String> taken = post(parts);
    assertEquals(303, taken.statusCode(), taken.body());
    String address = taken.headers().firstValue("Location").orElseThrow();
    String path = address.substring(address.indexOf("/references/"));
    while (running.get(path).body().contains("hx-get=\"/references/")) {
      Thread.onSpinWait();
    }
    return path;
  }

  private static String text(String path) throws Exception {
    HttpResponse<String> page = running.get(path);
    assertEquals(200, page.statusCode(), page.body());
    return page.body().replaceAll("<[^>]+>", " ").replace("&#34;", "\"").replaceAll("\\s+", " ");
  }

  private static void holds(String text, String sentence) {
    assertTrue(text.contains(sentence), sentence + " in " + text);
  }

  @Test
  void copiesRetractionsAndRefusedRecordsAreToldWithTheirReasons() throws Exception {
    String log =
        "database,date,words,count_reported,file\r\n"
            + "Invented Index,2031-02-03,forearm,2,one.ris\r\n"
            + "Another Index,2031-02-03,forearm,5,two.nbib\r\n";
    String path =
        settled(
            part("files", "one.ris", RIS)
                + part("files", "two.nbib", MEDLINE)
                + part("log", "searches.csv", log));
    String page = text(path);
    holds(page, "3 records read, 3 pairs proposed");
    holds(page, "The one study of the evidence base was compared too.");
    holds(page, "one.ris RIS 1 0 1");
    holds(page, "two.nbib MEDLINE text 2 0 0");
    holds(page, "one.ris, record 2, line 14");
    holds(page, "It stays out; add its title.");
    holds(page, "3 pairs look like copies of one paper");
    holds(page, "one:p1 Kell, Bo; Ostrow, Ina; " + TITLE + ". Imagined Bones. 2001;3:44-51");
    holds(page, "Both have the DOI 10.5555/paper.");
    holds(page, "evidence base:kell-2001 ");
    holds(page, "1 record of a paper that was retracted");
    holds(page, "two:90000003 Brann, Odo; Wax for gaps of the shin");
    holds(page, "Another Index reported 5 records, 3 more than the file two.nbib holds");
    assertFalse(page.contains("Invented Index reported"), "what agrees is not told");

    HttpResponse<String> table = running.get(path + "/proposals.csv");
    assertEquals(200, table.statusCode());
    holds(table.body(), "one:p1,two:90000001,same,");
    holds(table.body(), "two:90000003,,retracted,");
    String ris = running.get(path + "/references.ris").body();
    holds(ris, "ID  - one:p1\n");
    holds(ris, "AB  - A long tale of forearms.\n");
    JsonNode items =
        JsonMapper.builder().build().readTree(running.get(path + "/references.json").body());
    assertEquals(
        List.of("one:p1", "two:90000001", "two:90000003"),
        Stream.of(0, 1, 2).map(at -> items.get(at).get("id").asText()).toList());
    assertEquals(404, running.get(path + "/other.txt").statusCode());
  }

  @Test
  void noUploadStaysOnTheDisk() throws Exception {
    settled(part("files", "one.ris", RIS));
    try (Stream<Path> left = Files.walk(folder.resolve("uploads"))) {
      assertEquals(List.of(), left.filter(path -> path.toString().endsWith(".upload")).toList());
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "paper.pdf | %PDF-1.7 and more | The file is a PDF document.",
        "empty.ris | '' | The file is empty; export the records again.",
        "login.ris | <!DOCTYPE html><html><body>Log in</body></html> | The file is a web page",
        "table.csv | author,title,year | The file holds no references"
      })
  void aFileOfAnotherKindIsAnsweredInWordsAndKeepsNobodyFromTheRest(
      String name, String content, String words) throws Exception {
    String page = text(settled(part("files", name, content) + part("files", "one.ris", RIS)));
    holds(page, words);
    holds(page, "1 record read, 1 pair proposed");
    String alone = text(settled(part("files", name, content)));
    holds(alone, words);
    holds(alone, "0 records read, 0 pairs proposed");
  }

  @Test
  void aLogThatCannotBeReadIsToldBesideWhatWasFound() throws Exception {
    String page =
        text(settled(part("files", "one.ris", RIS) + part("log", "log.csv", "what,when\r\n")));
    holds(page, "The log could not be read");
    holds(page, "The column database is missing");
    holds(page, "1 record read");
  }

  @Test
  void aFormWithoutFilesIsAnsweredInWords() throws Exception {
    HttpResponse<String> answer = post(part("files", "", ""));
    assertEquals(422, answer.statusCode());
    holds(answer.body(), "No file was chosen.");
  }

  @Test
  void whatIsGoneIsACalmPage() throws Exception {
    for (String path : List.of("/references/none", "/references/none/proposals.csv")) {
      HttpResponse<String> answer = running.get(path);
      assertEquals(404, answer.statusCode());
      holds(answer.body(), "hand the files in again");
    }
  }
}
