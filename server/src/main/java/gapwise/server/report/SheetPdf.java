package gapwise.server.report;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import gapwise.figure.drawing.Face;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/**
 * Sets a page as a tagged PDF (PDF/UA, ISO 14289-1) with its typeface embedded. Nothing is fetched
 * from anywhere.
 */
public final class SheetPdf {
  private static final String FAMILY = "Liberation Sans";
  private static final int REGULAR = 400;
  private static final int BOLD = 700;

  static {
    XRLog.setLoggerImpl(new PdfLog());
  }

  private SheetPdf() {}

  /**
   * The PDF of a page.
   *
   * @param page well-formed XHTML in UTF-8, with its style inside
   */
  public static byte[] of(byte[] page) {
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    try {
      new PdfRendererBuilder()
          .usePdfUaAccessibility(true)
          .useExternalResourceAccessControl(
              (uri, kind) -> false, ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI)
          .useFont(() -> face(Face.REGULAR), FAMILY, REGULAR, FontStyle.NORMAL, true)
          .useFont(() -> face(Face.BOLD), FAMILY, BOLD, FontStyle.NORMAL, true)
          .useSVGDrawer(new PdfDrawer())
          .withW3cDocument(named(page), "")
          .toStream(pdf)
          .run();
    } catch (IOException e) {
      throw new UncheckedIOException("the PDF could not be written to memory", e);
    }
    return pdf.toByteArray();
  }

  private static ByteArrayInputStream face(Face face) {
    return new ByteArrayInputStream(face.bytes());
  }

  /** The page, in which each drawing has its title as the alternative text that PDF asks for. */
  private static Document named(byte[] page) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setNamespaceAware(true);
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      Document document = factory.newDocumentBuilder().parse(new ByteArrayInputStream(page));
      NodeList drawings = document.getElementsByTagName("svg");
      for (int i = 0; i < drawings.getLength(); i++) {
        Element svg = (Element) drawings.item(i);
        NodeList titles = svg.getElementsByTagName("title");
        svg.setAttribute(
            "alt", titles.getLength() > 0 ? titles.item(0).getTextContent() : "mark of the method");
      }
      return document;
    } catch (ParserConfigurationException | SAXException | IOException e) {
      throw new IllegalStateException("a page of ours is not well-formed", e);
    }
  }
}
