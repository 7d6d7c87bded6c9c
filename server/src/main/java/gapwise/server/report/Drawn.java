package gapwise.server.report;

import com.github.weisj.jsvg.SVGDocument;
import com.github.weisj.jsvg.parser.LoaderContext;
import com.github.weisj.jsvg.parser.SVGLoader;
import com.github.weisj.jsvg.view.ViewBox;
import gapwise.figure.drawing.Face;
import java.awt.Color;
import java.awt.Component;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Graphics2D;
import java.awt.GraphicsEnvironment;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;

/** A drawing of the sheet, to be drawn into a PDF or painted. */
final class Drawn {
  /** Pixels to a unit of the drawing: 3 are 288 to an inch. */
  private static final int FINE = 3;

  static {
    for (Face face : Face.values()) {
      try {
        GraphicsEnvironment.getLocalGraphicsEnvironment()
            .registerFont(
                Font.createFont(Font.TRUETYPE_FONT, new ByteArrayInputStream(face.bytes())));
      } catch (FontFormatException | IOException e) {
        throw new IllegalStateException("the typeface of drawings cannot be read", e);
      }
    }
  }

  private final SVGDocument document;

  private Drawn(SVGDocument document) {
    this.document = document;
  }

  /**
   * Reads a drawing of our own.
   *
   * @throws IllegalArgumentException when it is no SVG
   */
  static Drawn of(String svg) {
    SVGDocument read =
        new SVGLoader()
            .load(
                new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)),
                URI.create("sheet:svg"),
                LoaderContext.createDefault());
    if (read == null) {
      throw new IllegalArgumentException("no SVG that can be drawn");
    }
    return new Drawn(read);
  }

  double width() {
    return document.size().width;
  }

  double height() {
    return document.size().height;
  }

  void draw(Graphics2D graphics, double width, double height) {
    document.render((Component) null, graphics, new ViewBox((float) width, (float) height));
  }

  /** As a picture of dots (PNG) on white. */
  byte[] png() {
    int width = (int) Math.ceil(width() * FINE);
    int height = (int) Math.ceil(height() * FINE);
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    try {
      graphics.setColor(Color.WHITE);
      graphics.fillRect(0, 0, width, height);
      graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      draw(graphics, width, height);
    } finally {
      graphics.dispose();
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "png", bytes);
    } catch (IOException e) {
      throw new UncheckedIOException("a picture could not be written to memory", e);
    }
    return bytes.toByteArray();
  }
}
