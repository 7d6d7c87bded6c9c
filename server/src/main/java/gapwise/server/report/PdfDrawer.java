package gapwise.server.report;

import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.RenderingContext;
import java.io.File;
import java.util.List;
import org.w3c.dom.Element;
import org.w3c.dom.ls.DOMImplementationLS;
import org.w3c.dom.ls.LSSerializer;

/** Draws the drawings of a sheet into a PDF as lines and areas. */
final class PdfDrawer implements SVGDrawer {
  @Override
  public SVGImage buildSVGImage(
      Element svg, Box box, CssContext css, double width, double height, double dotsPerPixel) {
    Drawn drawn = Drawn.of(text(svg));
    double across = width > 0 ? width : drawn.width() * dotsPerPixel;
    double down = height > 0 ? height : across * drawn.height() / drawn.width();
    return new Image(drawn, across, down, dotsPerPixel);
  }

  private static String text(Element svg) {
    DOMImplementationLS writing =
        (DOMImplementationLS) svg.getOwnerDocument().getImplementation().getFeature("LS", "3.0");
    LSSerializer serializer = writing.createLSSerializer();
    serializer.getDomConfig().setParameter("xml-declaration", false);
    return serializer.writeToString(svg);
  }

  /**
   * One drawing.
   *
   * @param width in dots of the device
   * @param height in dots of the device
   */
  private record Image(Drawn drawn, double width, double height, double dotsPerPixel)
      implements SVGImage {
    @Override
    public int getIntrinsicWidth() {
      return (int) width;
    }

    @Override
    public int getIntrinsicHeight() {
      return (int) height;
    }

    @Override
    public void drawSVG(OutputDevice device, RenderingContext context, double x, double y) {
      device.drawWithGraphics(
          (float) x,
          (float) y,
          (float) width,
          (float) height,
          graphics -> drawn.draw(graphics, width / dotsPerPixel, height / dotsPerPixel));
    }
  }

  /** Faces are those of the program. */
  @Override
  public void importFontFaceRules(List<FontFaceRule> rules, SharedContext shared) {}

  @Override
  public void addFontFile(File file, String family, Integer weight, FontStyle style) {}

  @Override
  public void close() {}
}
