package gapwise.paper.file;

import gapwise.paper.Guard;
import gapwise.paper.Picture;
import gapwise.paper.Refused;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import javax.imageio.ImageIO;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.rendering.PageDrawer;
import org.apache.pdfbox.rendering.PageDrawerParameters;

/** Draws a page as a picture. */
final class PageDrawing {
  private static final double POINTS_PER_INCH = 72;

  private PageDrawing() {}

  static Picture draw(PDDocument document, int index, int dotsPerInch, Guard guard)
      throws IOException {
    PDPage page = document.getPage(index);
    DisplaySpace space = new DisplaySpace(page);
    if (!space.isUsable()) {
      throw new Guard.StoppedException(
          new Refused(
              Refused.Reason.DAMAGED,
              "Page " + (index + 1) + " has no size, so it cannot be drawn."));
    }
    ContentSize.check(page, guard);
    if (page.getResources() != null) {
      checkImages(
          page.getResources().getCOSObject(),
          guard,
          Collections.newSetFromMap(new IdentityHashMap<>()));
    }
    double most =
        Math.sqrt(guard.caps().pixels() / (space.width() * space.height())) * POINTS_PER_INCH;
    double used = Math.min(dotsPerInch, most);
    BufferedImage image =
        new Watched(document, guard)
            .renderImage(index, (float) (used / POINTS_PER_INCH), ImageType.RGB);
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    ImageIO.write(image, "png", png);
    return new Picture(png.toByteArray(), image.getWidth(), image.getHeight(), used);
  }

  /** Embedded pictures are unpacked whole by PDFBox, so their sizes are read first. */
  private static void checkImages(COSDictionary resources, Guard guard, Set<COSBase> seen) {
    guard.step();
    COSDictionary drawings = resources.getCOSDictionary(COSName.XOBJECT);
    if (!seen.add(resources) || drawings == null) {
      return;
    }
    for (COSName name : drawings.keySet()) {
      if (drawings.getDictionaryObject(name) instanceof COSStream stream) {
        long pixels =
            (long) Math.max(0, stream.getInt(COSName.WIDTH, 0))
                * Math.max(0, stream.getInt(COSName.HEIGHT, 0));
        if (pixels > guard.caps().pixels()) {
          throw new Guard.StoppedException(Refused.tooMuch("a picture of " + pixels + " pixels"));
        }
        COSDictionary own = stream.getCOSDictionary(COSName.RESOURCES);
        if (own != null) {
          checkImages(own, guard, seen);
        }
      }
    }
  }

  /** A drawer that the guard can end. */
  private static final class Watched extends PDFRenderer {
    private final Guard guard;

    Watched(PDDocument document, Guard guard) {
      super(document);
      this.guard = guard;
      setSubsamplingAllowed(true);
    }

    @Override
    protected PageDrawer createPageDrawer(PageDrawerParameters parameters) throws IOException {
      return new PageDrawer(parameters) {
        @Override
        protected void processOperator(Operator operator, List<COSBase> operands)
            throws IOException {
          guard.step();
          super.processOperator(operator, operands);
        }
      };
    }
  }
}
