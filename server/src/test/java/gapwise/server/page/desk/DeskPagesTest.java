package gapwise.server.page.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.RunningServer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URLEncoder;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The desk by its forms alone, as a browser without script sends them. All studies are invented.
 */
class DeskPagesTest {
  private static final Pattern DRAFT = Pattern.compile("/desk/([0-9a-f]{12})");
  private static final Pattern CELL = Pattern.compile("name=\"(c\\.\\d+\\.[a-z_0-9]+)\"");
  private static final Pattern KEY = Pattern.compile("name=\"key\" value=\"([0-9a-f]{16})\"");

  @TempDir static Path folder;
  private static RunningServer running;

  @BeforeAll
  static void open() {
    running = RunningServer.withStudies(folder);
  }

  @AfterAll
  static void close() {
    running.close();
  }

  private static HttpResponse<String> post(String path, String... fields)
      throws IOException, InterruptedException {
    StringBuilder body = new StringBuilder();
    for (int at = 0; at < fields.length; at += 2) {
      body.append(at == 0 ? "" : "&").append(URLEncoder.encode(fields[at], StandardCharsets.UTF_8));
      body.append('=').append(URLEncoder.encode(fields[at + 1], StandardCharsets.UTF_8));
    }
    return running.send(
        running
            .request(path)
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(body.toString())));
  }

  private static String begin(String study) throws IOException, InterruptedException {
    HttpResponse<String> answer = post("/desk", "study", study);
    assertEquals(303, answer.statusCode());
    Matcher draft = DRAFT.matcher(answer.headers().firstValue("Location").orElseThrow());
    assertTrue(draft.find());
    return draft.group();
  }

  /** The name of a field of a draft in its form. */
  private static String cell(String draft, String column) throws IOException, InterruptedException {
    Matcher cell = CELL.matcher(running.get(draft).body());
    while (cell.find()) {
      if (cell.group(1).endsWith("." + column)) {
        return cell.group(1);
      }
    }
    throw new AssertionError("no field " + column);
  }

  private static String complete(String study) throws IOException, InterruptedException {
    String draft = begin(study);
    post(draft + "/outcome", "outcome", "primary-union");
    post(
        draft,
        cell(draft, "title"),
        "An invented series of " + study,
        cell(draft, "first_author"),
        "Invented",
        cell(draft, "year"),
        "2031",
        cell(draft, "method"),
        "bone-transport",
        cell(draft, "patients"),
        "12",
        cell(draft, "limbs"),
        "12",
        cell(draft, "events"),
        "10",
        cell(draft, "total"),
        "12");
    return draft;
  }

  /** A standard error of 1.5 in 16 patients is a standard deviation of 6; by hand. */
  @Test
  void whatASynthesisWouldTakeIsToldAsOneTypesAndNothingOfItIsStored()
      throws IOException, InterruptedException {
    String draft = begin("inventedcalculated");
    post(draft + "/outcome", "outcome", "time-to-union");
    post(draft + "/column", "sheet", "outcomes", "column", "se");
    post(draft + "/cell", "cell", cell(draft, "mean"), "text", "20", "seen", "");
    post(draft + "/cell", "cell", cell(draft, "n"), "text", "16", "seen", "");
    String told =
        post(draft + "/cell", "cell", cell(draft, "se"), "text", "1.5", "seen", "").body();
    assertTrue(told.contains("In a synthesis"), told);
    assertTrue(told.contains("Mean 20.0 and SD 6.0 months would be taken."), told);
    String page = running.get(draft).body();
    assertTrue(
        page.contains("name=\"" + cell(draft, "sd") + "\" form=\"typed\" type=\"text\" value=\"\""),
        page);
    assertTrue(page.contains("Where papers differ"), page);
  }

  private static HttpResponse<String> handIn(String draft, String why)
      throws IOException, InterruptedException {
    Matcher key = KEY.matcher(running.get(draft + "/hand-in").body());
    while (key.find()) {
      post(draft + "/settle", "key", key.group(1), "who", "AB", "why", "as printed");
    }
    return post(draft + "/hand-in", "who", "AB", "why", why);
  }

  @Test
  void aWholeFormWithoutScriptBecomesAStudyThatCanBeMendedComparedWithdrawnAndBroughtBack()
      throws IOException, InterruptedException {
    HttpResponse<String> stored = handIn(complete("whole2031"), "first reading");
    assertEquals(303, stored.statusCode(), stored.body());
    assertEquals("/studies/whole2031", stored.headers().firstValue("Location").orElseThrow());

    HttpResponse<String> mend = post("/studies/whole2031/mend");
    Matcher draft = DRAFT.matcher(mend.headers().firstValue("Location").orElseThrow());
    assertTrue(draft.find());
    post(draft.group(), cell(draft.group(), "events"), "9");
    String before = running.get(draft.group() + "/hand-in").body();
    assertTrue(before.contains("data-head=\"Now\">10<"), before);
    assertTrue(before.contains("data-head=\"Then\">9<"), before);
    assertEquals(303, handIn(draft.group(), "Table 1 misread").statusCode());

    String changes = running.get("/studies/whole2031/versions").body();
    assertTrue(changes.contains("Table 1 misread"), changes);
    assertTrue(changes.contains("data-head=\"Version 1\">10<"), changes);
    assertTrue(changes.contains("data-head=\"Version 2\">9<"), changes);

    assertEquals(
        303,
        post("/studies/whole2031/withdraw", "seen", "2", "who", "AB", "why", "not this question")
            .statusCode());
    HttpResponse<String> gone = running.get("/studies/whole2031");
    assertEquals(303, gone.statusCode());
    String versions = gone.headers().firstValue("Location").orElseThrow();
    assertTrue(versions.endsWith("/studies/whole2031/versions"), versions);
    assertTrue(running.get("/studies/whole2031/versions").body().contains("not this question"));
    assertEquals(
        409,
        post("/studies/whole2031/withdraw", "seen", "2", "who", "CD", "why", "again").statusCode());
    assertEquals(
        303,
        post(
                "/studies/whole2031/bring-back",
                "version",
                "1",
                "seen",
                "3",
                "who",
                "AB",
                "why",
                "it was right")
            .statusCode());
    assertTrue(running.get("/studies/whole2031").body().contains("10 of 12"));
  }

  @Test
  void addingOneOutcomeToAStudyTakesAtMostFiveActions() throws IOException, InterruptedException {
    assertEquals(303, handIn(complete("five2031"), "first reading").statusCode());
    // 1 take it to the desk, 2 choose and add the outcome, 3 type its numbers (kept as they are
    // left), 4 go to hand in, 5 hand in.
    HttpResponse<String> mend = post("/studies/five2031/mend");
    Matcher draft = DRAFT.matcher(mend.headers().firstValue("Location").orElseThrow());
    assertTrue(draft.find());
    post(draft.group() + "/outcome", "outcome", "refracture");
    String page = running.get(draft.group()).body();
    Matcher cells = CELL.matcher(page.substring(page.lastIndexOf("class=\"outcome\"")));
    assertTrue(cells.find());
    post(draft.group() + "/cell", "cell", cells.group(1), "text", "1", "seen", "");
    assertTrue(cells.find());
    post(draft.group() + "/cell", "cell", cells.group(1), "text", "12", "seen", "");
    assertEquals(200, running.get(draft.group() + "/hand-in").statusCode());
    HttpResponse<String> done =
        post(draft.group() + "/hand-in", "who", "AB", "why", "refractures added");
    assertEquals(303, done.statusCode(), done.body());
    assertTrue(running.get("/studies/five2031").body().contains("1 of 12"));
  }

  @Test
  void whatCannotBeSoIsToldAtOnceAndIsNotTakenIn() throws IOException, InterruptedException {
    String draft = complete("wrong2031");
    HttpResponse<String> told =
        post(draft + "/cell", "cell", cell(draft, "events"), "text", "13", "seen", "10");
    assertEquals(200, told.statusCode());
    assertTrue(told.body().contains("cannot be so"), told.body());
    HttpResponse<String> refused = handIn(draft, "first reading");
    assertEquals(422, refused.statusCode());
    assertTrue(refused.body().contains("not taken in"));
    assertEquals(404, running.get("/studies/wrong2031").statusCode());
  }

  @Test
  void aFieldThatSomebodyElseChangedIsNotOverwritten() throws IOException, InterruptedException {
    String draft = complete("two2031");
    String cell = cell(draft, "patients");
    assertEquals(200, post(draft + "/cell", "cell", cell, "text", "13", "seen", "12").statusCode());
    HttpResponse<String> late = post(draft + "/cell", "cell", cell, "text", "14", "seen", "12");
    assertEquals(409, late.statusCode());
    assertTrue(late.body().contains("“13”"), late.body());
  }

  @Test
  void whatIsSentWrongIsAnsweredInWords() throws IOException, InterruptedException {
    String draft = begin("odd2031");
    assertEquals(404, running.get("/desk/000000000000").statusCode());
    assertEquals(404, running.get("/desk/..%2f..").statusCode());
    assertEquals(422, post("/desk", "study", "").statusCode());
    assertEquals(404, post(draft + "/cell", "cell", "c.1.nothing", "text", "1").statusCode());
    assertEquals(404, post(draft + "/cell", "cell", "title", "text", "1").statusCode());
    assertEquals(409, post(draft + "/cell", "cell", "c.99.title", "text", "1").statusCode());
    assertEquals(404, post(draft + "/cell", "cell", "c.1.readings", "text", "x").statusCode());
    assertEquals(404, post(draft + "/cell", "cell", "c.1.study_id", "text", "x").statusCode());
    assertEquals(404, post(draft + "/outcome", "outcome", "happiness").statusCode());
    assertEquals(404, post(draft + "/column", "sheet", "x", "column", "y").statusCode());
    assertEquals(422, post(draft + "/settle", "key", "0123456789abcdef").statusCode());
    assertEquals(
        422,
        post(draft + "/cell", "cell", "c.1.title", "text", "x".repeat(30_000), "seen", "")
            .statusCode());
    assertEquals(404, running.get("/papers/" + "0".repeat(32) + "/pages/1").statusCode());
    assertEquals(404, running.get("/papers/x/pages/1.png").statusCode());
    assertEquals(404, running.get("/studies/nobody/versions").statusCode());
    assertEquals(303, post(draft + "/discard").statusCode());
    assertEquals(404, running.get(draft).statusCode());
  }

  private static HttpResponse<String> hand(String path, String field, String name, byte[] content)
      throws IOException, InterruptedException {
    String boundary = "gapwise-test";
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    String head =
        "--"
            + boundary
            + "\r\nContent-Disposition: form-data; name=\""
            + field
            + "\"; filename=\""
            + name
            + "\"\r\nContent-Type: application/octet-stream\r\n\r\n";
    body.writeBytes(head.getBytes(StandardCharsets.UTF_8));
    body.writeBytes(content);
    body.writeBytes(("\r\n--" + boundary + "--\r\n").getBytes(StandardCharsets.UTF_8));
    return running.send(
        running
            .request(path)
            .header("Content-Type", "multipart/form-data; boundary=" + boundary)
            .POST(HttpRequest.BodyPublishers.ofByteArray(body.toByteArray())));
  }

  @Test
  void aFileThatIsNoPaperAndPapersSpoiltInManyWaysAreAnsweredInWords() throws Exception {
    String draft = begin("spoilt2031");
    byte[] words = "This is no paper.".getBytes(StandardCharsets.UTF_8);
    HttpResponse<String> none = hand(draft + "/paper", "paper", "words.pdf", words);
    assertEquals(422, none.statusCode());
    assertTrue(none.body().contains("The file is not a PDF"), none.body());

    byte[] sound = Files.readAllBytes(InventedPaper.write(folder.resolve("sound.pdf")));
    assertEquals(303, hand(draft + "/paper", "paper", "sound.pdf", sound).statusCode());
    Random random = new Random(20311);
    for (int spoilt = 0; spoilt < 40; spoilt++) {
      byte[] file = sound.clone();
      for (int hit = 0; hit <= spoilt; hit++) {
        file[8 + random.nextInt(file.length - 8)] = (byte) random.nextInt(256);
      }
      byte[] cut = spoilt % 3 == 0 ? Arrays.copyOf(file, random.nextInt(file.length)) : file;
      HttpResponse<String> answer = hand(draft + "/paper", "paper", "spoilt.pdf", cut);
      assertTrue(answer.statusCode() == 303 || answer.statusCode() == 422, answer.body());
      if (answer.statusCode() == 303) {
        for (String part : new String[] {"/table?whole=yes", "/table?page=1&box=40,40,500,400"}) {
          int status = running.get(draft + part).statusCode();
          assertTrue(status == 200 || status == 422 || status == 404, part + " gave " + status);
        }
      }
    }
  }

  @Test
  void aBoxWithoutWordsIsThePlaceOfWhatWasTyped() throws Exception {
    String draft = begin("scanned2031");
    byte[] paper = Files.readAllBytes(InventedPaper.write(folder.resolve("scan.pdf")));
    assertEquals(303, hand(draft + "/paper", "paper", "scan.pdf", paper).statusCode());
    String cell = cell(draft, "patients");
    String box = "100.00,700.00,140.00,712.00";
    HttpResponse<String> early =
        post(draft + "/read", "cell", cell, "words", "", "page", "1", "box", box);
    assertTrue(early.body().contains("Type what you read there"), early.body());
    post(draft + "/cell", "cell", cell, "text", "12", "seen", "");
    HttpResponse<String> placed =
        post(draft + "/read", "cell", cell, "words", "", "page", "1", "box", box);
    assertEquals(200, placed.statusCode(), placed.body());
    String page = running.get(draft).body();
    assertTrue(page.contains("value=\"12\""), "what was typed stays");
    assertTrue(page.contains("read-at\">p. 1:"), "and has its place");
  }

  @Test
  void moreThanTheDeskTakesIsRefusedInWordsAndNothingIsLostSilently() throws Exception {
    String draft = complete("large2031");
    String head = "Case\tAge (years)\tDefect (cm)\n";
    String rows = "%d\t30\t6.0\n";
    StringBuilder many = new StringBuilder(head);
    for (int patient = 1; patient <= 2_000; patient++) {
      many.append(rows.formatted(patient));
    }
    HttpResponse<String> tooMany = post(draft + "/table", "text", many.toString());
    assertEquals(422, tooMany.statusCode());
    assertTrue(tooMany.body().contains("2,000 rows are read"), tooMany.body());

    StringBuilder full = new StringBuilder(head);
    for (int patient = 1; patient < 2_000; patient++) {
      full.append(rows.formatted(patient));
    }
    HttpResponse<String> refused =
        post(draft + "/table/take", "text", full.toString(), "group.A", "A");
    assertEquals(409, refused.statusCode(), "2,002 rows are more than the desk takes");
    assertTrue(refused.body().contains("Nothing was changed"), refused.body());
  }

  @Test
  void whateverIsPastedHasAnAnswer() throws IOException, InterruptedException {
    String draft = begin("pasted2031");
    Random random = new Random(20312);
    String letters = "0123456789.,;:()±–%/-\t\n \"'=+abcnuyes\u00e9\u4e00\ud83d";
    for (int paste = 0; paste < 60; paste++) {
      StringBuilder text = new StringBuilder();
      for (int at = 0; at < 1 + random.nextInt(400); at++) {
        text.append(letters.charAt(random.nextInt(letters.length())));
      }
      int status = post(draft + "/table", "text", text.toString()).statusCode();
      assertTrue(status == 200 || status == 422 || status == 400, text + " gave " + status);
    }
  }
}
