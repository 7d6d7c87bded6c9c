package gapwise.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.paper.Refused.Reason;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.zip.DeflaterOutputStream;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionJavaScript;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files made to hurt their reader get a plain answer in bounded time and memory. */
class HostilePaperTest {
  /** Well above the caps of these tests, so that only a reader that hangs passes it. */
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private static final Caps CAPS = Caps.STANDARD.withMilliseconds(4_000);

  @TempDir Path folder;

  private Path save(PDDocument document) throws IOException {
    Path file = folder.resolve("hostile-" + System.nanoTime() + ".pdf");
    document.save(file.toFile());
    document.close();
    return file;
  }

  private static Object page(Path file) {
    return assertTimeoutPreemptively(
        PATIENCE,
        () -> {
          Opening opening = Paper.open(file, CAPS);
          if (!(opening instanceof Opened opened)) {
            return opening;
          }
          try (Paper paper = opened.paper()) {
            return paper.page(1);
          }
        });
  }

  private static Reason reason(Object answer) {
    return assertInstanceOf(Refused.class, answer).reason();
  }

  private static Object picture(Path file) {
    return assertTimeoutPreemptively(
        PATIENCE,
        () -> {
          try (Paper paper = ((Opened) Paper.open(file, CAPS)).paper()) {
            return paper.picture(1, 300);
          }
        });
  }

  /** A plain file written by hand, whose table of objects is left for the reader to mend. */
  private Path plain(String... objects) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.write("%PDF-1.7\n".getBytes(StandardCharsets.ISO_8859_1));
    for (int i = 0; i < objects.length; i++) {
      String object = (i + 1) + " 0 obj\n" + objects[i] + "\nendobj\n";
      bytes.write(object.getBytes(StandardCharsets.ISO_8859_1));
    }
    bytes.write("trailer\n<< /Root 1 0 R >>\n%%EOF\n".getBytes(StandardCharsets.ISO_8859_1));
    return Files.write(folder.resolve("plain-" + System.nanoTime() + ".pdf"), bytes.toByteArray());
  }

  @Test
  void aPageThatUnpacksToGigabytesIsRefused() throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (OutputStream out = new DeflaterOutputStream(packed)) {
      byte[] block = "0 0 m 1 1 l S ".repeat(8_000).getBytes(StandardCharsets.US_ASCII);
      for (int i = 0; i < 3_000; i++) {
        out.write(block);
      }
    }
    PDDocument document = new PDDocument();
    PDPage page = new PDPage();
    document.addPage(page);
    COSStream stream = document.getDocument().createCOSStream();
    try (OutputStream raw = stream.createRawOutputStream()) {
      raw.write(packed.toByteArray());
    }
    stream.setItem(COSName.FILTER, COSName.FLATE_DECODE);
    page.getCOSObject().setItem(COSName.CONTENTS, stream);
    assertEquals(Reason.TOO_MUCH, reason(page(save(document))));
  }

  @Test
  void aPagePackedTwiceIsCountedThroughBoth() throws IOException {
    byte[] once = deflated(new byte[300_000_000]);
    PDDocument document = new PDDocument();
    PDPage page = new PDPage();
    document.addPage(page);
    COSStream stream = document.getDocument().createCOSStream();
    try (OutputStream raw = stream.createRawOutputStream()) {
      raw.write(deflated(once));
    }
    COSArray filters = new COSArray();
    filters.add(COSName.FLATE_DECODE);
    filters.add(COSName.FLATE_DECODE);
    stream.setItem(COSName.FILTER, filters);
    page.getCOSObject().setItem(COSName.CONTENTS, stream);
    assertEquals(Reason.TOO_MUCH, reason(page(save(document))));
  }

  private static byte[] deflated(byte[] bytes) throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (OutputStream out = new DeflaterOutputStream(packed)) {
      out.write(bytes);
    }
    return packed.toByteArray();
  }

  /** Each drawing draws the next one ten times: a hundred million steps out of nine lines. */
  @Test
  void drawingsThatDrawOneAnotherTenTimesAreEnded() throws IOException {
    PDDocument document = new PDDocument();
    PDPage page = new PDPage();
    document.addPage(page);
    PDFormXObject inner = null;
    for (int depth = 0; depth < 9; depth++) {
      PDFormXObject form = new PDFormXObject(document);
      form.setBBox(new PDRectangle(100, 100));
      form.setResources(new PDResources());
      String content = "0 0 m 1 1 l S";
      if (inner != null) {
        form.getResources().put(COSName.getPDFName("X"), inner);
        content = "/X Do ".repeat(10);
      }
      try (OutputStream out = form.getStream().createOutputStream()) {
        out.write(content.getBytes(StandardCharsets.US_ASCII));
      }
      inner = form;
    }
    page.setResources(new PDResources());
    page.getResources().put(COSName.getPDFName("X"), inner);
    COSStream stream = document.getDocument().createCOSStream();
    try (OutputStream out = stream.createOutputStream()) {
      out.write("/X Do".getBytes(StandardCharsets.US_ASCII));
    }
    page.getCOSObject().setItem(COSName.CONTENTS, stream);
    Path file = save(document);
    Reason reason = reason(page(file));
    assertTrue(reason == Reason.TOO_MUCH || reason == Reason.TOO_SLOW, reason.toString());
    Reason drawn = reason(picture(file));
    assertTrue(drawn == Reason.TOO_MUCH || drawn == Reason.TOO_SLOW, drawn.toString());
  }

  @Test
  void aDrawingThatDrawsItselfEnds() throws IOException {
    PDDocument document = new PDDocument();
    PDPage page = new PDPage();
    document.addPage(page);
    PDFormXObject form = new PDFormXObject(document);
    form.setBBox(new PDRectangle(100, 100));
    form.setResources(new PDResources());
    form.getResources().put(COSName.getPDFName("X"), form);
    try (OutputStream out = form.getStream().createOutputStream()) {
      out.write("/X Do /X Do".getBytes(StandardCharsets.US_ASCII));
    }
    page.setResources(new PDResources());
    page.getResources().put(COSName.getPDFName("X"), form);
    COSStream stream = document.getDocument().createCOSStream();
    try (OutputStream out = stream.createOutputStream()) {
      out.write("/X Do".getBytes(StandardCharsets.US_ASCII));
    }
    page.getCOSObject().setItem(COSName.CONTENTS, stream);
    assertInstanceOf(PageReading.class, page(save(document)));
  }

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
    Path file =
        plain(
            "<< /Type /Catalog /Pages 2 0 R >>",
            "<< /Type /Pages /Count 100000 /Kids [3 0 R] >>",
            "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 100 100] >>");
    assertEquals(Reason.TOO_MANY_PAGES, reason(page(file)));
    Path fewer =
        plain(
            "<< /Type /Catalog /Pages 2 0 R >>",
            "<< /Type /Pages /Count -4 /Kids [3 0 R] >>",
            "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 100 100] >>");
    Object answer = page(fewer);
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
  void aHugeEmbeddedPictureIsRefused() throws IOException {
    PDDocument document = new PDDocument();
    PDPage page = new PDPage();
    document.addPage(page);
    COSStream image = document.getDocument().createCOSStream();
    image.setItem(COSName.TYPE, COSName.XOBJECT);
    image.setItem(COSName.SUBTYPE, COSName.IMAGE);
    image.setInt(COSName.WIDTH, 60_000);
    image.setInt(COSName.HEIGHT, 60_000);
    image.setInt(COSName.BITS_PER_COMPONENT, 8);
    image.setItem(COSName.COLORSPACE, COSName.DEVICERGB);
    try (OutputStream out = image.createOutputStream(COSName.FLATE_DECODE)) {
      out.write(new byte[1000]);
    }
    COSDictionary drawings = new COSDictionary();
    drawings.setItem(COSName.getPDFName("I"), image);
    COSDictionary resources = new COSDictionary();
    resources.setItem(COSName.XOBJECT, drawings);
    page.setResources(new PDResources(resources));
    COSStream stream = document.getDocument().createCOSStream();
    try (OutputStream out = stream.createOutputStream()) {
      out.write("500 0 0 500 0 0 cm /I Do".getBytes(StandardCharsets.US_ASCII));
    }
    page.getCOSObject().setItem(COSName.CONTENTS, stream);
    Path file = save(document);
    assertEquals(Reason.TOO_MUCH, reason(picture(file)));
    assertInstanceOf(Page.class, page(file));
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
  void morePiecesThanAPageMayHoldAreRefused() throws IOException {
    PDDocument document = new PDDocument();
    PDPage page = new PDPage();
    document.addPage(page);
    COSStream stream = document.getDocument().createCOSStream();
    try (OutputStream out = stream.createOutputStream(COSName.FLATE_DECODE)) {
      byte[] lines = "1 1 l ".repeat(100_000).getBytes(StandardCharsets.US_ASCII);
      out.write("0 0 m ".getBytes(StandardCharsets.US_ASCII));
      for (int i = 0; i < 10; i++) {
        out.write(lines);
      }
      out.write("S".getBytes(StandardCharsets.US_ASCII));
    }
    page.getCOSObject().setItem(COSName.CONTENTS, stream);
    assertEquals(Reason.TOO_MUCH, reason(page(save(document))));
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

  @Test
  void numbersOutOfAllBoundsAreNoPlaces() throws IOException {
    PDDocument document = new PDDocument();
    PDPage page = new PDPage();
    document.addPage(page);
    COSStream stream = document.getDocument().createCOSStream();
    try (OutputStream out = stream.createOutputStream()) {
      String content =
          "1e38 0 0 1e38 0 0 cm 1e38 1e38 m 1e38 -1e38 l S 1e38 0 0 1e38 1e38 1e38 re f 0 0 0 0 0 0"
              + " cm 5 5 m 6 6 l S";
      out.write(content.getBytes(StandardCharsets.US_ASCII));
    }
    page.getCOSObject().setItem(COSName.CONTENTS, stream);
    page.getCOSObject().setItem(COSName.ROTATE, COSInteger.get(45));
    Page read = assertInstanceOf(Page.class, page(save(document)));
    read.paths().forEach(path -> assertTrue(Double.isFinite(path.box().width())));
    assertTrue(read.levelRules().isEmpty() || read.width() > 0);
  }
}
