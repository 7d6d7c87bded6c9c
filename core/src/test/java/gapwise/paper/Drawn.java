package gapwise.paper;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Objects;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.util.Matrix;

/** A paper drawn for a test, in points from the top left corner, so that its truth is known. */
public final class Drawn implements AutoCloseable {
  private final PDDocument document = new PDDocument();
  private final PDFont regular = face("Regular");
  private final PDFont bold = face("Bold");
  private PDPageContentStream content;
  private double height;

  public Drawn() throws IOException {
    page(595, 842);
  }

  private PDFont face(String style) throws IOException {
    String resource = "/liberation/LiberationSans-" + style + ".ttf";
    try (InputStream in =
        Objects.requireNonNull(Drawn.class.getResourceAsStream(resource), resource)) {
      return PDType0Font.load(document, in);
    }
  }

  public PDDocument document() {
    return document;
  }

  public PDPage page() {
    return document.getPage(document.getNumberOfPages() - 1);
  }

  /** Begins another page; the first page of a fresh paper is A4. */
  public Drawn page(double width, double pageHeight) throws IOException {
    if (content != null) {
      content.close();
    }
    PDPage page = new PDPage(new PDRectangle((float) width, (float) pageHeight));
    document.addPage(page);
    content = new PDPageContentStream(document, page);
    height = pageHeight;
    return this;
  }

  public PDPageContentStream content() {
    return content;
  }

  public double width(String text, double size) throws IOException {
    return regular.getStringWidth(text) / 1000 * size;
  }

  /** Text on a baseline; gives the box of its letters. */
  public Box text(double x, double baseline, double size, String text) throws IOException {
    return text(x, baseline, size, text, false);
  }

  public Box bold(double x, double baseline, double size, String text) throws IOException {
    return text(x, baseline, size, text, true);
  }

  private Box text(double x, double baseline, double size, String text, boolean strong)
      throws IOException {
    PDFont font = strong ? bold : regular;
    content.beginText();
    content.setFont(font, (float) size);
    content.newLineAtOffset((float) x, (float) (height - baseline));
    content.showText(text);
    content.endText();
    double width = font.getStringWidth(text) / 1000 * size;
    return new Box(x, baseline - 0.74 * size, x + width, baseline + 0.21 * size);
  }

  public Box right(double x, double baseline, double size, String text) throws IOException {
    return text(x - width(text, size), baseline, size, text);
  }

  public Box middle(double x, double baseline, double size, String text) throws IOException {
    return text(x - width(text, size) / 2, baseline, size, text);
  }

  /** Text that runs upwards from a place. */
  public void upwards(double x, double y, double size, String text) throws IOException {
    content.beginText();
    content.setFont(regular, (float) size);
    content.setTextMatrix(Matrix.getRotateInstance(Math.PI / 2, (float) x, (float) (height - y)));
    content.showText(text);
    content.endText();
  }

  public void line(double x1, double y1, double x2, double y2) throws IOException {
    content.moveTo((float) x1, (float) (height - y1));
    content.lineTo((float) x2, (float) (height - y2));
    content.stroke();
  }

  /** A line through places given as x, y, x, y and so on. */
  public void path(double... places) throws IOException {
    content.moveTo((float) places[0], (float) (height - places[1]));
    for (int i = 2; i < places.length; i += 2) {
      content.lineTo((float) places[i], (float) (height - places[i + 1]));
    }
    content.stroke();
  }

  /** Saves the paper; nothing can be drawn afterwards. */
  public Path save(Path folder) throws IOException {
    content.close();
    Path file = folder.resolve("paper-" + System.nanoTime() + ".pdf");
    document.save(file.toFile());
    return file;
  }

  /** Saves the paper and reads one page of it. */
  public Page read(Path folder, int number) throws IOException {
    return pageOf(save(folder), number);
  }

  /** One page of a file. */
  public static Page pageOf(Path file, int number) {
    Opening opening = Paper.open(file);
    if (!(opening instanceof Opened opened)) {
      throw new AssertionError(opening.toString());
    }
    try (Paper paper = opened.paper()) {
      PageReading reading = paper.page(number);
      if (!(reading instanceof Page page)) {
        throw new AssertionError(reading.toString());
      }
      return page;
    }
  }

  @Override
  public void close() throws IOException {
    document.close();
  }
}
