package gapwise.server.page.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.server.testing.OwnBrowser;
import gapwise.server.testing.SharedServer;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.chrome.ChromeDriver;

/** From words on the first page to a sheet in the hand, in a real BROWSER. */
class SheetBrowserTest {
  @RegisterExtension private static final SharedServer SERVER = SharedServer.withDemonstration();

  private static final String ASKED =
      "6 cm infected distal tibia, transport, membrane or amputation";

  /** "88 (78 to 94)" as the page for the team has it. */
  private static final Pattern ESTIMATE =
      Pattern.compile(
          "((?:under )?[0-9][0-9,.]*) \\(((?:under )?[0-9][0-9,.]*) to ((?:over )?[0-9][0-9,.]*)\\)");

  @RegisterExtension private static final OwnBrowser BROWSER = new OwnBrowser();

  @ParameterizedTest
  @ValueSource(ints = {1280, 390})
  void wordsLeadToATableToASheetToATaggedPdfWithTheNumbersOfTheApi(int width) throws Exception {
    ChromeDriver driver = BROWSER.driver();
    BROWSER.width(width);
    driver.get(SERVER.address("/"));
    BROWSER.leave(() -> BROWSER.find("#ask-q").sendKeys(ASKED, Keys.ENTER));
    // It comes with the table, which is worked out after the page has come.
    BROWSER.follow(By.linkText("Prepare a sheet"));
    BROWSER.assertAddress("/sheet?");
    assertEquals(2, driver.findElements(By.cssSelector("section.sheet")).size());
    assertTrue(BROWSER.tooWide() <= 0, "the sheet is wider than the window");
    String query = URI.create(driver.getCurrentUrl()).getRawQuery();
    Files.deleteIfExists(BROWSER.downloads().resolve("sheet.pdf"));
    driver.findElement(By.linkText("PDF, A4")).click();
    Path file = BROWSER.downloaded("sheet.pdf");
    assertEquals(List.of(), BROWSER.complaints());
    try (PDDocument document = Loader.loadPDF(file.toFile())) {
      isTagged(document);
      hasNumbersOfTheApi(text(document), query);
    }
  }

  private static String text(PDDocument document) throws Exception {
    PDFTextStripper second = new PDFTextStripper();
    second.setStartPage(2);
    return second.getText(document).replaceAll("[\\s\u00a0]+", " ");
  }

  /** PDF/UA-1, ISO 14289-1: marked as tagged, with a tree of structure, a language and a title. */
  private static void isTagged(PDDocument document) {
    assertEquals(2, document.getNumberOfPages());
    assertTrue(document.getDocumentCatalog().getMarkInfo().isMarked());
    assertTrue(document.getDocumentCatalog().getStructureTreeRoot().getKids().size() > 0);
    assertEquals("en", document.getDocumentCatalog().getLanguage());
    assertEquals("Ways to treat a gap in the bone", document.getDocumentInformation().getTitle());
  }

  /** Every number of the table, to half a unit of the last digit that is printed. */
  private static void hasNumbersOfTheApi(String text, String query) throws Exception {
    List<MatchResult> printed = ESTIMATE.matcher(text).results().toList();
    JsonNode table =
        JsonMapper.builder().build().readTree(SERVER.get("/api/v1/options?" + query).body());
    List<String> missing = new ArrayList<>();
    int numbers = 0;
    for (JsonNode option : table.required("methods")) {
      String method = option.required("method").required("code").asText();
      if (!Set.of("bone-transport", "induced-membrane", "primary-amputation").contains(method)) {
        continue;
      }
      for (int i = 0; i < option.required("outcomes").size(); i++) {
        JsonNode cell = option.required("outcomes").get(i);
        boolean share = table.required("outcomes").get(i).required("unit").asText().equals("share");
        if (cell.has("value")) {
          numbers++;
          JsonNode value = cell.required("value");
          if (printed.stream().noneMatch(one -> says(one, value, share ? 100 : 1))) {
            missing.add(method + ": " + cell);
          }
        }
      }
    }
    assertEquals(List.of(), missing);
    assertTrue(numbers >= 12, numbers + " numbers");
    assertTrue(printed.size() >= numbers, printed.size() + " of " + numbers);
  }

  private static boolean says(MatchResult printed, JsonNode value, double factor) {
    return says(printed.group(1), factor * value.required("estimate").asDouble())
        && says(printed.group(2), factor * value.required("lower").asDouble())
        && says(printed.group(3), factor * value.required("upper").asDouble());
  }

  private static boolean says(String printed, double number) {
    String digits = printed.replaceAll("[^0-9.]", "");
    int places = digits.contains(".") ? digits.length() - digits.indexOf('.') - 1 : 0;
    double said = Double.parseDouble(digits);
    if (printed.startsWith("under")) {
      return number < said;
    }
    return printed.startsWith("over")
        ? number > said
        : Math.abs(number - said) <= 0.5 * Math.pow(10, -places) + 1e-9;
  }
}
