package gapwise.server.report;

import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import gapwise.figure.drawing.Picture;
import gapwise.figure.file.Painter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.util.Matrix;

/**
 * A figure as a PDF of one page, sharp at every size; words are drawn as outlines, so that they
 * look alike everywhere. It names no time, so that the same drawing is the same bytes.
 */
public final class FigurePdf {
  /** A unit of a drawing is a 96th of an inch, one of a PDF a 72nd. */
  private static final float POINTS_PER_UNIT = 0.75f;

  private FigurePdf() {}

  /**
   * The document.
   *
   * @param title what it is called
   */
  public static byte[] of(Picture picture, String title) {
    float width = (float) picture.width();
    float height = (float) picture.height();
    try (PDDocument document = new PDDocument()) {
      PDRectangle size = new PDRectangle(width * POINTS_PER_UNIT, height * POINTS_PER_UNIT);
      PDPage page = new PDPage(size);
      document.addPage(page);
      PdfBoxGraphics2D graphics = new PdfBoxGraphics2D(document, width, height);
      try {
        Painter.paint(picture, graphics, width, height);
      } finally {
        graphics.dispose();
      }
      try (PDPageContentStream content = new PDPageContentStream(document, page)) {
        content.transform(Matrix.getScaleInstance(POINTS_PER_UNIT, POINTS_PER_UNIT));
        content.drawForm(graphics.getXFormObject());
      }
      PDDocumentInformation about = new PDDocumentInformation();
      about.setTitle(title);
      document.setDocumentInformation(about);
      // Else the library takes the time for it.
      document.setDocumentId(0L);
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException("the PDF could not be written to memory", e);
    }
  }
}
