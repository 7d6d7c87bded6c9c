package gapwise.figure.file;

import com.github.weisj.jsvg.SVGDocument;
import com.github.weisj.jsvg.parser.DocumentLimits;
import com.github.weisj.jsvg.parser.LoaderContext;
import com.github.weisj.jsvg.parser.SVGLoader;
import com.github.weisj.jsvg.view.ViewBox;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.figure.drawing.Face;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Svg;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Turns a drawing into a PNG picture, without a screen. */
final class Png {
  /** More pixels than this are refused: so many are painted in about a second. */
  private static final long MOST_PIXELS = 40_000_000;

  /** Painted at a time, 4 bytes of memory each. */
  private static final int PIXELS_A_BAND = 8_000_000;

  private static final Pattern WORDS = Pattern.compile("<text[^>]*>([^\n]*)</text>");

  private Png() {}

  /**
   * The drawing as PNG that states its dots per inch.
   *
   * @param picture a drawing
   * @param size 16 pixels wide or more; the height follows
   * @param texts what the file says of itself, name to words, such as "Title" or "Description" (PNG
   *     specification, section 11.3.4.2, lists the names)
   * @throws IllegalArgumentException if the width is too small or the picture would be too large
   */
  static byte[] of(Picture picture, PngSize size, Map<String, String> texts) {
    int pixelWidth = size.pixelWidth();
    // What a rounding error lies over a whole number is no further row of pixels.
    double exact = pixelWidth * picture.height() / picture.width();
    int pixelHeight = (int) Math.ceil(exact - 1e-6);
    if (pixelWidth < 16 || (long) pixelWidth * pixelHeight > mostPixels()) {
      throw new IllegalArgumentException(
          "a picture must be 16 or more pixels wide and have at most "
              + mostPixels()
              + " pixels, was "
              + pixelWidth
              + " x "
              + pixelHeight);
    }
    try {
      return painted(picture, pixelWidth, Math.max(1, pixelHeight), size, texts, PIXELS_A_BAND);
    } catch (IOException e) {
      throw new UncheckedIOException("the picture could not be written to memory", e);
    }
  }

  /** The greatest width in pixels that a drawing can be painted at. */
  static int widest(Picture picture) {
    return (int) Math.sqrt(0.99 * mostPixels() * picture.width() / picture.height());
  }

  private static long mostPixels() {
    return Math.min(MOST_PIXELS, Work.current().budget().most(Limit.PIXELS));
  }

  /**
   * Paints a picture band by band.
   *
   * @param pixelsABand painted at a time; at least one row
   */
  static byte[] painted(
      Picture picture,
      int width,
      int height,
      PngSize size,
      Map<String, String> texts,
      int pixelsABand)
      throws IOException {
    SVGDocument document = document(picture);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PngStream png = new PngStream(bytes, width, height);
    double perMetre = size.dotsPerInch() * 1000 / Medium.MILLIMETRES_PER_INCH;
    png.pixelsPerMetre((int) Math.round(perMetre));
    // In the order of their names, so that bytes stay the same.
    for (Map.Entry<String, String> text : new TreeMap<>(texts).entrySet()) {
      png.text(text.getKey(), text.getValue());
    }
    int rows = Math.min(height, Math.max(1, pixelsABand / width));
    BufferedImage band = new BufferedImage(width, rows, BufferedImage.TYPE_INT_RGB);
    for (int top = 0; top < height; top += rows) {
      Work.check();
      paint(document, band, top, height);
      png.rows(band, Math.min(rows, height - top));
    }
    png.end();
    return bytes.toByteArray();
  }

  static SVGDocument document(Picture picture) {
    byte[] bytes = typeface(picture.svg()).getBytes(StandardCharsets.UTF_8);
    SVGDocument document =
        new SVGLoader()
            .load(new ByteArrayInputStream(bytes), URI.create("figure:svg"), loading(picture));
    if (document == null) {
      throw new IllegalArgumentException("the drawing is no SVG that can be painted");
    }
    return document;
  }

  /** The rows from {@code top} on of a picture so many pixels high. */
  private static void paint(SVGDocument document, BufferedImage band, int top, int height) {
    Graphics2D graphics = band.createGraphics();
    try {
      graphics.setColor(java.awt.Color.WHITE);
      graphics.fillRect(0, 0, band.getWidth(), band.getHeight());
      graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      graphics.setRenderingHint(
          RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
      graphics.translate(0, -top);
      document.render((java.awt.Component) null, graphics, new ViewBox(band.getWidth(), height));
    } finally {
      graphics.dispose();
    }
  }

  /**
   * The painter knows no list of typefaces, only one: that which letters are measured in. Words
   * that hold a letter it has not, such as East Asian names, are left to the machine.
   */
  private static String typeface(String svg) {
    String painted = svg.replace(Svg.TYPEFACES, PaintedFaces.FAMILY);
    return Face.REGULAR.has(painted) ? painted : WORDS.matcher(painted).replaceAll(Png::ofMachine);
  }

  private static String ofMachine(MatchResult text) {
    String machine = " font-family=\"" + java.awt.Font.SANS_SERIF + "\"";
    boolean ours = Face.REGULAR.has(text.group(1));
    return Matcher.quoteReplacement(
        ours ? text.group() : "<text" + machine + text.group().substring("<text".length()));
  }

  /** The loader's usual limit of elements is made for icons; ours grows with the drawing. */
  private static LoaderContext loading(Picture picture) {
    int nesting = 30;
    int uses = 15;
    int elements = Math.max(2000, picture.svg().length() / 10);
    return LoaderContext.builder()
        .documentLimits(new DocumentLimits(nesting, uses, elements))
        .build();
  }
}
