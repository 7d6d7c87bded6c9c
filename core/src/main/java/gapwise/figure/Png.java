package gapwise.figure;

import com.github.weisj.jsvg.SVGDocument;
import com.github.weisj.jsvg.parser.DocumentLimits;
import com.github.weisj.jsvg.parser.LoaderContext;
import com.github.weisj.jsvg.parser.SVGLoader;
import com.github.weisj.jsvg.view.ViewBox;
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
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOInvalidTreeException;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.ImageOutputStream;

/** Turns a drawing into a PNG picture, without a screen. */
public final class Png {
  /** More pixels than this are refused: a picture is held in memory whole (4 bytes a pixel). */
  static final long MOST_PIXELS = 40_000_000;

  private Png() {}

  /**
   * The drawing as PNG.
   *
   * @param picture a drawing
   * @param pixelWidth width in pixels, 16 or more; the height follows
   * @param texts what the file says of itself, name to words, such as "Title" or "Description" (PNG
   *     specification, section 11.3.4.2, lists the names)
   * @throws IllegalArgumentException if the width is too small or the picture would be too large
   */
  public static byte[] of(Picture picture, int pixelWidth, Map<String, String> texts) {
    return of(picture, pixelWidth, Optional.empty(), texts);
  }

  private static byte[] of(
      Picture picture, int pixelWidth, Optional<PngSize> size, Map<String, String> texts) {
    // What a rounding error lies over a whole number is no further row of pixels.
    double exact = pixelWidth * picture.height() / picture.width();
    int pixelHeight = (int) Math.ceil(exact - 1e-6);
    if (pixelWidth < 16 || (long) pixelWidth * pixelHeight > MOST_PIXELS) {
      throw new IllegalArgumentException(
          "a picture must be 16 or more pixels wide and have at most "
              + MOST_PIXELS
              + " pixels, was "
              + pixelWidth
              + " x "
              + pixelHeight);
    }
    try {
      return written(painted(picture, pixelWidth, Math.max(1, pixelHeight)), size, texts);
    } catch (IOException e) {
      throw new UncheckedIOException("the picture could not be written to memory", e);
    }
  }

  /**
   * The drawing as PNG that states its dots per inch.
   *
   * @throws IllegalArgumentException if the picture would be too large
   */
  static byte[] of(Picture picture, PngSize size, Map<String, String> texts) {
    return of(picture, size.pixelWidth(), Optional.of(size), texts);
  }

  /** The greatest width in pixels that a drawing can be painted at. */
  static int widest(Picture picture) {
    return (int) Math.sqrt(0.99 * MOST_PIXELS * picture.width() / picture.height());
  }

  private static BufferedImage painted(Picture picture, int width, int height) {
    byte[] bytes = typeface(picture.svg()).getBytes(StandardCharsets.UTF_8);
    SVGDocument document =
        new SVGLoader()
            .load(new ByteArrayInputStream(bytes), URI.create("figure:svg"), loading(picture));
    if (document == null) {
      throw new IllegalArgumentException("the drawing is no SVG that can be painted");
    }
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    try {
      graphics.setColor(java.awt.Color.WHITE);
      graphics.fillRect(0, 0, width, height);
      graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      graphics.setRenderingHint(
          RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
      document.render((java.awt.Component) null, graphics, new ViewBox(width, height));
    } finally {
      graphics.dispose();
    }
    return image;
  }

  /** The painter knows no list of typefaces, only one; it gets the plain one of the machine. */
  private static String typeface(String svg) {
    return svg.replace(Svg.TYPEFACES, java.awt.Font.SANS_SERIF);
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

  private static byte[] written(
      BufferedImage image, Optional<PngSize> size, Map<String, String> texts) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ImageOutputStream stream = ImageIO.createImageOutputStream(bytes)) {
      IIOMetadata metadata =
          writer.getDefaultImageMetadata(
              ImageTypeSpecifier.createFromRenderedImage(image), writer.getDefaultWriteParam());
      addTexts(metadata, texts);
      if (size.isPresent()) {
        addDots(metadata, size.get().dotsPerInch());
      }
      writer.setOutput(stream);
      writer.write(new IIOImage(image, null, metadata));
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }

  /** Adds international text chunks, in the order of their names so that bytes stay the same. */
  private static void addTexts(IIOMetadata metadata, Map<String, String> texts)
      throws IIOInvalidTreeException {
    if (texts.isEmpty()) {
      return;
    }
    IIOMetadataNode chunk = new IIOMetadataNode("iTXt");
    texts.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(
            text -> {
              IIOMetadataNode entry = new IIOMetadataNode("iTXtEntry");
              entry.setAttribute("keyword", text.getKey());
              entry.setAttribute("compressionFlag", "FALSE");
              entry.setAttribute("compressionMethod", "0");
              entry.setAttribute("languageTag", "en");
              entry.setAttribute("translatedKeyword", "");
              entry.setAttribute("text", text.getValue());
              chunk.appendChild(entry);
            });
    IIOMetadataNode root = new IIOMetadataNode("javax_imageio_png_1.0");
    root.appendChild(chunk);
    metadata.mergeTree("javax_imageio_png_1.0", root);
  }

  /** Adds the pHYs chunk, which counts pixels per metre (PNG specification, section 11.3.4.3). */
  private static void addDots(IIOMetadata metadata, double dotsPerInch)
      throws IIOInvalidTreeException {
    String perMetre = Long.toString(Math.round(dotsPerInch * 1000 / Medium.MILLIMETRES_PER_INCH));
    IIOMetadataNode chunk = new IIOMetadataNode("pHYs");
    chunk.setAttribute("pixelsPerUnitXAxis", perMetre);
    chunk.setAttribute("pixelsPerUnitYAxis", perMetre);
    chunk.setAttribute("unitSpecifier", "meter");
    IIOMetadataNode root = new IIOMetadataNode("javax_imageio_png_1.0");
    root.appendChild(chunk);
    metadata.mergeTree("javax_imageio_png_1.0", root);
  }
}
