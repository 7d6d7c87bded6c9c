package gapwise.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.paper.Refused.Reason;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionJavaScript;
import org.junit.jupiter.api.Test;

/** Files made to hurt their reader get a plain answer in bounded time and memory. */
class HostilePaperTest extends HostileFiles {
  @Test
  void pagesThatAreTheirOwnChildrenEnd() throws IOException {
    Path file =
        plain(
            "<< /Type /Catalog /Pages 2 0 R >>",
            "<< /Type /Pages /Count 3 /Kids [2 0 R 3 0 R] /Parent 3 0 R >>",
            "<< /Type /Pages /Count 2 /Kids [2 0 R] /Parent 2 0 R >>");
    assertInstanceOf(Refused.class, page(file));
  }

  @Test
  void aHundredThousandPagesAreSaidToBeTooMany() throws IOException {
    PDDocument document = new PDDocument();
    document.addPage(new PDPage());
    document.getPages().getCOSObject().setInt(COSName.COUNT, 100_000);
    assertEquals(Reason.TOO_MANY_PAGES, reason(page(save(document))));
    Path negative =
        plain(
            "<< /Type /Catalog /Pages 2 0 R >>",
            "<< /Type /Pages /Count -4 /Kids [3 0 R] >>",
            "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 100 100] >>");
    Object answer = page(negative);
    assertTrue(
        answer instanceof Page || reason(answer) == Reason.DAMAGED, "counted again, or refused");
  }

  @Test
  void listsNestedAHundredThousandDeepEnd() throws IOException {
    String deep = "[".repeat(100_000) + "]".repeat(100_000);
    Path file =
        plain(
            "<< /Type /Catalog /Pages 2 0 R /Deep " + deep + " >>",
            "<< /Type /Pages /Count 1 /Kids [3 0 R] >>",
            "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 100 100] >>");
    assertInstanceOf(Object.class, page(file));
  }

  @Test
  void aPageWithoutSizeSaysSo() throws IOException {
    PDDocument document = new PDDocument();
    document.addPage(new PDPage(new PDRectangle(0, 0)));
    Path file = save(document);
    Object answer = page(file);
    if (answer instanceof Page page) {
      assertTrue(page.width() > 0);
    } else {
      assertEquals(Reason.DAMAGED, reason(answer));
    }
    assertInstanceOf(PagePicture.class, picture(file));
  }

  @Test
  void aHugePageIsDrawnSmaller() throws IOException {
    PDDocument document = new PDDocument();
    document.addPage(new PDPage(new PDRectangle(200_000, 200_000)));
    Picture picture = assertInstanceOf(Picture.class, picture(save(document)));
    assertTrue((long) picture.width() * picture.height() <= CAPS.pixels() * 1.01);
    assertTrue(picture.dotsPerInch() < 10);
  }

  @Test
  void aScriptIsNeverRunAndAMissingTypefaceDoesNotSpoilThePage() throws IOException {
    PDDocument document = new PDDocument();
    PDPage page = new PDPage();
    document.addPage(page);
    document
        .getDocumentCatalog()
        .setOpenAction(new PDActionJavaScript("while (true) { app.alert('x'); }"));
    COSDictionary font = new COSDictionary();
    font.setItem(COSName.TYPE, COSName.FONT);
    font.setItem(COSName.SUBTYPE, COSName.TRUE_TYPE);
    font.setItem(COSName.BASE_FONT, COSName.getPDFName("NowhereAtAll"));
    font.setItem(COSName.ENCODING, COSName.WIN_ANSI_ENCODING);
    COSDictionary fonts = new COSDictionary();
    fonts.setItem(COSName.getPDFName("F"), font);
    COSDictionary resources = new COSDictionary();
    resources.setItem(COSName.FONT, fonts);
    page.setResources(new PDResources(resources));
    COSStream stream = document.getDocument().createCOSStream();
    try (OutputStream out = stream.createOutputStream()) {
      String content = "BT /F 12 Tf 50 700 Td (seen) Tj /None 12 Tf 0 -20 Td (unseen) Tj ET";
      out.write(content.getBytes(StandardCharsets.US_ASCII));
    }
    page.getCOSObject().setItem(COSName.CONTENTS, stream);
    Path file = save(document);
    Page read = assertInstanceOf(Page.class, page(file));
    assertEquals("seen", read.words().get(0).text());
    assertInstanceOf(Picture.class, picture(file));
  }

  @Test
  void whoeverWaitsCanStop() throws IOException {
    try (Drawn drawn = new Drawn()) {
      Path file = drawn.save(folder);
      try (Paper paper = ((Opened) Paper.open(file)).paper()) {
        Thread.currentThread().interrupt();
        Refused refused = assertInstanceOf(Refused.class, paper.page(1));
        assertTrue(Thread.interrupted(), "the interruption is kept for whoever called");
        assertEquals(Reason.STOPPED, refused.reason());
        assertInstanceOf(Page.class, paper.page(1));
      }
    }
  }

  @Test
  void countsOfPagesThatLieAreAnsweredWhereThePageIsAsked() throws IOException {
    Path file =
        plain(
            "<< /Type /Catalog /Pages 2 0 R >>",
            "<< /Type /Pages /Count 40 /Kids [3 0 R] >>",
            "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 100 100] >>");
    try (Paper paper = ((Opened) Paper.open(file, CAPS)).paper()) {
      assertInstanceOf(Page.class, paper.page(1));
      assertInstanceOf(Refused.class, paper.page(40));
    }
  }
}
