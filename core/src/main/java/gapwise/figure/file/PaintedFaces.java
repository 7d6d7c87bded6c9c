package gapwise.figure.file;

import gapwise.figure.drawing.Face;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.GraphicsEnvironment;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * The typeface of figures as the painter knows it: the faces that come with the program, registered
 * under a name of our own. Under their own name the painter would take another version of them
 * where the machine has one, and a picture would have other bytes there.
 */
final class PaintedFaces {
  private static final String NAME = "Liberation Sans";

  /** As long as the name it stands for, so that nothing in the file moves. */
  private static final String OURS = "Gapwise Figures";

  /** The name as the painter finds it. */
  static final String FAMILY = registered();

  private PaintedFaces() {}

  private static String registered() {
    GraphicsEnvironment painter = GraphicsEnvironment.getLocalGraphicsEnvironment();
    for (Face face : Face.values()) {
      try {
        painter.registerFont(
            Font.createFont(Font.TRUETYPE_FONT, new ByteArrayInputStream(renamed(face.bytes()))));
      } catch (FontFormatException | IOException e) {
        throw new IllegalStateException("the typeface of figures cannot be painted", e);
      }
    }
    return OURS;
  }

  /** The font file with our name in its table of names, in each of its two encodings. */
  private static byte[] renamed(byte[] font) {
    byte[] ours = font.clone();
    for (Charset charset : new Charset[] {StandardCharsets.UTF_16BE, StandardCharsets.US_ASCII}) {
      replace(ours, NAME.getBytes(charset), OURS.getBytes(charset));
      // The name for printers has no blank.
      replace(
          ours, NAME.replace(" ", "").getBytes(charset), OURS.replace(" ", "").getBytes(charset));
    }
    return ours;
  }

  private static void replace(byte[] in, byte[] name, byte[] by) {
    for (int at = 0; at + name.length <= in.length; at++) {
      int same = 0;
      while (same < name.length && in[at + same] == name[same]) {
        same++;
      }
      if (same == name.length) {
        System.arraycopy(by, 0, in, at, by.length);
      }
    }
  }
}
