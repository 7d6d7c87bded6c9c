package gapwise.server.page.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.PageStates;
import gapwise.server.testing.SharedServer;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFPictureData;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The sheet on the screen, as PDF and as a text document. */
class SheetPageTest {
  @RegisterExtension private static final SharedServer SERVER = SharedServer.withDemonstration();

  private static final String ASKED =
      "from=6&to=6&bone=tibia&infected=yes&wish=walking-soon&method=autograft"
          + "&method=bone-transport&method=induced-membrane&method=vascularised-bone-flap"
          + "&method=acute-shortening-lengthening";

  /** Claims that no such number carries; common practice, no source. */
  private static final Pattern FORBIDDEN =
      Pattern.compile(
          "\\b(significant(ly)?|proven|safer?|works|best|superior|inferior|trend|no effect"
              + "|no difference|equally good|ineffective|failed to|no evidence of harm)\\b",
          Pattern.CASE_INSENSITIVE);

  private static String page(String query) throws IOException, InterruptedException {
    HttpResponse<String> answer = SERVER.get("/sheet?whole=yes&" + query);
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body();
  }

  private static byte[] file(String path) throws IOException, InterruptedException {
    HttpResponse<byte[]> answer =
        HttpClient.newHttpClient()
            .send(
                HttpRequest.newBuilder(URI.create(SERVER.address(path))).build(),
                HttpResponse.BodyHandlers.ofByteArray());
    assertEquals(200, answer.statusCode());
    return answer.body();
  }

  /** Words of a page without its drawings, blanks as one. */
  private static String words(String html) {
    return html.replaceAll("(?s)<svg.*?</svg>", " ")
        .replaceAll("<[^>]*>", " ")
        .replaceAll("[\\s\u00a0]+", " ");
  }

  private static String sheet(String html) {
    return html.substring(html.indexOf("<section class=\"sheet patient"), html.indexOf("</main>"));
  }

  private static List<String> all(String pattern, String text) {
    List<String> found = new ArrayList<>();
    Matcher matcher = Pattern.compile(pattern).matcher(text);
    while (matcher.find()) {
      found.add(matcher.group(1));
    }
    return found;
  }

  @Test
  void moreMethodsThanStandOnOnePageAreChosenFrom() throws IOException, InterruptedException {
    String page = page("from=6&to=6");
    assertTrue(page.contains("Which methods stand on the sheet?"));
    assertTrue(page.contains("name=\"from\" value=\"6\""));
    assertEquals(422, SERVER.get("/sheet.pdf?from=6&to=6").statusCode());
  }

  @Test
  void methodsStandInTheOrderOfTheVocabularyAndAmputationIsAmongThem()
      throws IOException, InterruptedException {
    List<String> names = all("<p class=\"name\">(?s:.*?)>\\s*([A-Z][^<>]*)</p>", page(ASKED));
    assertEquals(
        List.of(
            "Move bone inside a frame",
            "Shorten first, then lengthen",
            "A spacer first, then bone",
            "Living bone from elsewhere",
            "Your own bone as a graft",
            "Take the leg off now"),
        names);
  }

  @Test
  void numbersAreThoseOfTheTable() throws IOException, InterruptedException {
    String sheet = words(sheet(page(ASKED)));
    String table = SERVER.get("/compare/table?" + ASKED).body();
    List<String> values =
        all("class=\"value\"[^>]*>([^<]*</a> <span class=\"limits\">[^<]*)</span>", table);
    assertTrue(values.size() > 20, values.size() + " values");
    String body = table.substring(0, table.indexOf("Primary amputation"));
    all("class=\"value\"[^>]*>([^<]*</a> <span class=\"limits\">[^<]*)</span>", body)
        .forEach(
            one -> {
              String printed = one.replaceAll("</a> <span class=\"limits\">", " (") + ")";
              assertTrue(sheet.contains(printed), printed);
            });
  }

  @Test
  void everyArrayHasAHundredMarksACertaintyAndAnAlternative()
      throws IOException, InterruptedException {
    String sheet = sheet(page(ASKED));
    List<String> cells = all("(?s)<td class=\"share\"(.*?)</td>", sheet);
    assertEquals(18, cells.size());
    for (String cell : cells) {
      if (cell.contains("class=\"marks\"")) {
        assertTrue(cell.contains("<b>How sure: "), cell);
        Matcher title =
            Pattern.compile("Of 100 marks (\\d+) are filled, (\\d+) hatched, (\\d+) empty")
                .matcher(cell);
        assertTrue(title.find(), cell);
        int sum = 0;
        for (int i = 1; i <= 3; i++) {
          sum += Integer.parseInt(title.group(i));
        }
        assertEquals(100, sum);
      } else {
        assertTrue(
            words(cell)
                .matches(
                    ".*(Does not apply|none counted this|did not count this|No study we found"
                        + "|give no number|Reported:).*"),
            cell);
        assertFalse(words(cell).matches(".*> *(0|-|\u2013) *$"), cell);
      }
    }
  }

  @Test
  void everyMethodHasTheSameParts() throws IOException, InterruptedException {
    String sheet = sheet(page(ASKED));
    for (String part : List.of("<b>Asks of you:</b>", "<b>May go wrong:</b>", "class=\"course\"")) {
      assertEquals(6, sheet.split(Pattern.quote(part), -1).length - 1, part);
    }
  }

  @Test
  void nothingClaimsMoreThanItsCertaintyCarries() throws IOException, InterruptedException {
    Matcher claim = FORBIDDEN.matcher(words(sheet(page(ASKED))));
    assertFalse(claim.find(), () -> claim.group());
  }

  @Test
  void eachMinimumStandardForDecisionAidsIsMetWhereTheGuideSays()
      throws IOException, InterruptedException {
    String sheet = sheet(page(ASKED));
    String marked = String.join(" ", all("data-standard=\"([^\"]*)\"", sheet));
    String guide = Files.readString(Path.of("..", "docs", "decision-aid.md"));
    for (String one :
        List.of("q1", "q2", "q3", "q4", "q5", "q6", "c1", "c2", "c3", "c4", "c5", "c6")) {
      assertTrue(List.of(marked.split(" ")).contains(one), one);
      assertTrue(guide.contains("| `" + one + "` |"), one);
    }
  }

  @Test
  void whatIsTypedIsSentNowhereAndNobodyIsAskedForAName() throws IOException, InterruptedException {
    String sheet = sheet(page(ASKED));
    assertFalse(sheet.contains("<form"), "a form would send what is typed");
    all("<(?:input|textarea)([^>]*)>", sheet)
        .forEach(field -> assertFalse(field.contains(" name="), field));
    assertFalse(words(sheet).matches("(?i).*(your name|patient name|date of birth).*"));
  }

  @Test
  void thePdfIsTaggedHasTwoPagesOnBothPapersAndTheSameWords()
      throws IOException, InterruptedException {
    for (String paper : List.of("", "&paper=letter")) {
      try (PDDocument pdf = Loader.loadPDF(file("/sheet.pdf?" + ASKED + paper))) {
        assertEquals(2, pdf.getNumberOfPages(), paper);
        assertTrue(pdf.getDocumentCatalog().getMarkInfo().isMarked());
        assertTrue(pdf.getDocumentCatalog().getStructureTreeRoot() != null);
        assertEquals("en", pdf.getDocumentCatalog().getLanguage());
        String text = new PDFTextStripper().getText(pdf).replaceAll("[\\s\u00a0]+", " ");
        assertTrue(text.contains("6 cm of your shin bone is missing."), text);
        all("<b>([0-9.,]+ \\([^<]*\\))</b>", page(ASKED))
            .forEach(number -> assertTrue(text.contains(number), number));
        assertEquals(
            paper.isEmpty() ? 842 : 792, Math.round(pdf.getPage(0).getMediaBox().getHeight()));
      }
    }
  }

  @Test
  void whatPaperHasNoRoomForStandsOnTheScreenAndInTheTextDocument()
      throws IOException, InterruptedException {
    String asked = PageStates.byName().get("sheet: more than paper holds").split("\\?", 2)[1];
    String page = page(asked);
    String printed = String.join(" ", all("(?s)<div class=\"print-only\">(.*?)</div>", page));
    String shown = words(sheet(page.replaceAll("(?s)<div class=\"print-only\">.*?</div>", "")));
    List<String> told =
        List.of("First, of 100 ways of weighing", "mean cost and years healed", "15 more stand");
    String left = "Asked for; paper has no room left for ";
    for (String one : told) {
      assertTrue(shown.contains(one), one);
      assertFalse(printed.contains(one), one);
    }
    assertFalse(shown.contains(left), "the screen has room");
    assertTrue(printed.contains(left + "it, and") && printed.contains(left + "them, and"), printed);
    try (PDDocument pdf = Loader.loadPDF(file("/sheet.pdf?" + asked))) {
      String text = new PDFTextStripper().getText(pdf).replaceAll("[\\s\u00a0]+", " ");
      assertTrue(text.contains(left), text);
      told.forEach(one -> assertFalse(text.contains(one), one));
    }
    try (XWPFDocument word =
        new XWPFDocument(new ByteArrayInputStream(file("/sheet.docx?" + asked)))) {
      String text =
          word.getParagraphs().stream()
              .map(one -> one.getText())
              .collect(Collectors.joining(" "))
              .replaceAll("[\\s\u00a0]+", " ");
      told.forEach(one -> assertTrue(text.contains(one), one));
      assertFalse(text.contains(left), text);
    }
  }

  @Test
  void theTextDocumentHasTheSameNumbersHeadRowsAndAlternatives()
      throws IOException, InterruptedException {
    String page = page(ASKED);
    try (XWPFDocument word =
        new XWPFDocument(new ByteArrayInputStream(file("/sheet.docx?" + ASKED)))) {
      assertEquals(2, word.getTables().size());
      StringBuilder text = new StringBuilder();
      for (XWPFTable table : word.getTables()) {
        assertTrue(table.getRow(0).isRepeatHeader());
        text.append(table.getText());
      }
      all("<b>([0-9.,]+ \\([^<]*\\))</b>", page)
          .forEach(number -> assertTrue(text.toString().contains(number), number));
      String xml = word.getDocument().xmlText();
      List<XWPFPictureData> pictures = word.getAllPictures();
      assertTrue(pictures.size() > 6, pictures.size() + " pictures");
      assertTrue(all("descr=\"([^\"]*)\"", xml).size() >= pictures.size());
      assertTrue(xml.contains("marks 78 are filled") || xml.contains("are filled"), "alternatives");
    }
  }
}
