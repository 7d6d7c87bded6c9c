package gapwise.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.paper.Refused.Reason;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
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
import org.junit.jupiter.api.Test;

/** Drawings made to hurt their reader get a plain answer in bounded time and memory. */
class HostileDrawingTest extends HostileFiles {
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
