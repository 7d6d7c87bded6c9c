package gapwise.figure.drawing;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** A drawing read back through an XML parser, so that tests see what a viewer would see. */
public final class DrawnSvg {
  private final Element root;

  private DrawnSvg(Element root) {
    this.root = root;
  }

  /** A piece of text and the box that it takes: capitals above the baseline, tails below. */
  public record Letters(
      String text, double left, double top, double right, double bottom, double size, String fill) {
    public boolean overlaps(Letters other) {
      double slack = 0.05;
      return left < other.right - slack
          && other.left < right - slack
          && top < other.bottom - slack
          && other.top < bottom - slack;
    }
  }

  public static DrawnSvg of(Picture picture) {
    return of(picture.svg());
  }

  public static DrawnSvg of(String svg) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setNamespaceAware(true);
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      Document document =
          factory
              .newDocumentBuilder()
              .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
      return new DrawnSvg(document.getDocumentElement());
    } catch (Exception e) {
      throw new AssertionError("the drawing is not well-formed: " + e.getMessage(), e);
    }
  }

  public Element root() {
    return root;
  }

  public List<Element> all(String name) {
    NodeList found = root.getElementsByTagNameNS("*", name);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < found.getLength(); i++) {
      elements.add((Element) found.item(i));
    }
    return elements;
  }

  /** Groups of one kind of part, such as "series". */
  public List<Element> parts(String part) {
    return all("g").stream().filter(g -> g.getAttribute("data-part").equals(part)).toList();
  }

  public static List<Element> children(Element parent, String name) {
    List<Element> found = new ArrayList<>();
    for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (node instanceof Element element && element.getLocalName().equals(name)) {
        found.add(element);
      }
    }
    return found;
  }

  public static double number(Element element, String attribute) {
    return Double.parseDouble(element.getAttribute(attribute));
  }

  public List<Letters> letters() {
    return all("text").stream().map(DrawnSvg::letters).toList();
  }

  private static Letters letters(Element text) {
    double size = number(text, "font-size");
    boolean bold = text.getAttribute("font-weight").equals("700");
    double width = TextMeasure.width(text.getTextContent(), size, bold);
    double x = number(text, "x");
    double y = number(text, "y");
    double left =
        switch (text.getAttribute("text-anchor")) {
          case "middle" -> x - width / 2;
          case "end" -> x - width;
          default -> x;
        };
    String fill = text.hasAttribute("fill") ? text.getAttribute("fill") : Ink.INK;
    return new Letters(
        text.getTextContent(), left, y - 0.74 * size, left + width, y + 0.2 * size, size, fill);
  }
}
