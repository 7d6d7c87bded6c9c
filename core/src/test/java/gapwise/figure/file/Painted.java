package gapwise.figure.file;

import gapwise.figure.drawing.Picture;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;

/** What stands behind the words of a drawing, painted at one pixel a unit. */
public final class Painted {
  private static final Pattern WORDS = Pattern.compile("<text[ >][^\n]*</text>\n");

  private Painted() {}

  /** The drawing without its words. */
  public static BufferedImage behindTheWords(Picture picture) {
    String bare = WORDS.matcher(picture.svg()).replaceAll("");
    PngSize size = new PngSize(picture.width() / 96 * 25.4, 96);
    byte[] png = Png.of(new Picture(bare, picture.width(), picture.height()), size, Map.of());
    try {
      return ImageIO.read(new ByteArrayInputStream(png));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
