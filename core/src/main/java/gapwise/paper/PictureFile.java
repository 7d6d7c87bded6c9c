package gapwise.paper;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.Locale;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.event.IIOReadProgressListener;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageInputStream;

/**
 * A picture that was handed in as a PNG or JPEG file, such as a figure saved from a screen. It is
 * decoded within caps of size and time, laid on white, and written anew, so that nothing of the
 * file but its pixels is kept. Its size is looked at before its pixels are.
 */
public final class PictureFile {
  /** A figure of a paper has a few megabytes at most; common practice, no source. */
  public static final long MOST_BYTES = 20_000_000;

  /** A page of A4 at 300 dots an inch has 8.7 million; three of these at once fit in memory. */
  public static final long MOST_PIXELS = 12_000_000;

  /** The longer side is shown at most so long, points: that of a page. */
  private static final double LONGEST = 720;

  private static final double POINTS_PER_INCH = 72;

  private static final int[] PNG = {0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
  private static final int[] JPEG = {0xFF, 0xD8, 0xFF};

  private static final Refused DAMAGED =
      new Refused(
          Refused.Reason.DAMAGED,
          "The picture is damaged, or of a kind that is not read. Open it, save it as PNG and hand"
              + " that in.");

  private PictureFile() {}

  /**
   * Reads a file that somebody handed in.
   *
   * @return the picture, or in words why it was not read
   */
  public static PagePicture read(Path file) {
    return read(file, Caps.STANDARD);
  }

  static PagePicture read(Path file, Caps caps) {
    try {
      return attempt(file, new Guard(caps));
    } catch (Guard.StoppedException stopped) {
      return stopped.refused();
    } catch (IOException | RuntimeException | StackOverflowError damaged) {
      // What is wrong with a file comes as an exception of any kind.
      return DAMAGED;
    }
  }

  /**
   * A picture that was written by {@link #read} before; its pixels are not decoded again.
   *
   * @throws IOException where the file is gone or was changed since
   */
  public static Picture kept(Path file) throws IOException {
    byte[] png = Files.readAllBytes(file);
    ImageReader reader = reader("png");
    try (ImageInputStream in = new FileImageInputStream(file.toFile())) {
      reader.setInput(in, true, true);
      return picture(png, reader.getWidth(0), reader.getHeight(0));
    } finally {
      reader.dispose();
    }
  }

  private static PagePicture attempt(Path file, Guard guard) throws IOException {
    long bytes = Files.size(file);
    if (bytes > MOST_BYTES) {
      return new Refused(
          Refused.Reason.TOO_MANY_BYTES,
          "The picture has "
              + bytes
              + " bytes, more than the "
              + MOST_BYTES
              + " that are read. Cut the one figure out of it and hand that in.");
    }
    int[] head = new int[PNG.length];
    try (var in = Files.newInputStream(file)) {
      for (int at = 0; at < head.length; at++) {
        head[at] = in.read();
      }
    }
    boolean png = begins(head, PNG);
    if (!png && !begins(head, JPEG)) {
      return new Refused(
          Refused.Reason.NOT_A_PICTURE,
          "The file is no PNG or JPEG picture: it does not begin as one. Save the figure as PNG and"
              + " hand that in.");
    }
    return decoded(file, reader(png ? "png" : "jpeg"), guard);
  }

  private static boolean begins(int[] head, int[] mark) {
    for (int at = 0; at < mark.length; at++) {
      if (head[at] != mark[at]) {
        return false;
      }
    }
    return true;
  }

  private static ImageReader reader(String format) {
    Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(format);
    if (!readers.hasNext()) {
      throw new IllegalStateException("every Java platform reads " + format);
    }
    return readers.next();
  }

  private static PagePicture decoded(Path file, ImageReader reader, Guard guard)
      throws IOException {
    try (ImageInputStream in = new FileImageInputStream(file.toFile())) {
      // Words beside the pixels may unpack without end, so they are passed over.
      reader.setInput(in, true, true);
      long width = reader.getWidth(0);
      long height = reader.getHeight(0);
      if (width * height > MOST_PIXELS) {
        return new Refused(
            Refused.Reason.TOO_MUCH,
            String.format(
                Locale.ROOT,
                "The picture has %d by %d pixels, more than the %d million that are read. Cut the"
                    + " one figure out of it, or save it smaller, and hand that in.",
                width,
                height,
                MOST_PIXELS / 1_000_000));
      }
      reader.addIIOReadProgressListener(new Watch(guard));
      BufferedImage read = reader.read(0);
      guard.look();
      return picture(onWhite(read), read.getWidth(), read.getHeight());
    } finally {
      reader.dispose();
    }
  }

  private static byte[] onWhite(BufferedImage read) throws IOException {
    BufferedImage plain =
        new BufferedImage(read.getWidth(), read.getHeight(), BufferedImage.TYPE_INT_RGB);
    Graphics2D drawing = plain.createGraphics();
    drawing.setColor(Color.WHITE);
    drawing.fillRect(0, 0, read.getWidth(), read.getHeight());
    drawing.drawImage(read, 0, 0, null);
    drawing.dispose();
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    ImageIO.write(plain, "png", png);
    return png.toByteArray();
  }

  private static Picture picture(byte[] png, int width, int height) {
    double dots = Math.max(1, Math.max(width, height) / LONGEST) * POINTS_PER_INCH;
    return new Picture(png, width, height, dots);
  }

  /** Ends a reading that takes too long, or that nobody waits for. */
  private record Watch(Guard guard) implements IIOReadProgressListener {
    @Override
    public void imageProgress(ImageReader source, float percentageDone) {
      guard.look();
    }

    @Override
    public void imageStarted(ImageReader source, int imageIndex) {}

    @Override
    public void imageComplete(ImageReader source) {}

    @Override
    public void readAborted(ImageReader source) {}

    @Override
    public void sequenceStarted(ImageReader source, int minIndex) {}

    @Override
    public void sequenceComplete(ImageReader source) {}

    @Override
    public void thumbnailStarted(ImageReader source, int imageIndex, int thumbnailIndex) {}

    @Override
    public void thumbnailProgress(ImageReader source, float percentageDone) {}

    @Override
    public void thumbnailComplete(ImageReader source) {}
  }
}
