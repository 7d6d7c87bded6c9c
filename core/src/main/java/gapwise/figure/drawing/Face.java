package gapwise.figure.drawing;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/**
 * The two faces in which every figure is set: Liberation Sans (SIL Open Font License 1.1), whose
 * letters are as wide as those of Arial and Helvetica. They come with the program, so a drawing is
 * measured and painted alike on every machine.
 */
public enum Face {
  REGULAR("LiberationSans-Regular.ttf"),
  BOLD("LiberationSans-Bold.ttf");

  /** Room for a letter that the face has not: a full square, as East Asian letters take. */
  private static final double SQUARE = 1.04;

  /** Unicode begins its combining marks here. */
  private static final int FIRST_MARK = 0x300;

  private final String file;
  private final AdvanceWidths widths;
  private final int square;

  Face(String file) {
    this.file = file;
    this.widths = AdvanceWidths.of(bytes());
    this.square = (int) Math.round(SQUARE * widths.unitsPerEm());
  }

  /** The font file (OpenType). */
  public byte[] bytes() {
    String path = "/liberation/" + file;
    try (InputStream stream = Face.class.getResourceAsStream(path)) {
      if (stream == null) {
        throw new IllegalStateException("the typeface " + path + " is not on the class path");
      }
      return stream.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException("the typeface " + path + " cannot be read", e);
    }
  }

  /** Whether the face has every letter of the text. */
  public boolean has(String text) {
    return text.codePoints()
        .allMatch(point -> point < ' ' || takesNoRoom(point) || widths.has(point));
  }

  /** Width of the text without kerning, in units of the face. */
  long units(String text) {
    long units = 0;
    for (int i = 0; i < text.length(); ) {
      int point = text.codePointAt(i);
      units += units(point);
      i += Character.charCount(point);
    }
    return units;
  }

  int units(int point) {
    if (widths.has(point)) {
      // Marks that stand on the letter before them have a width of their own in some faces.
      return point >= FIRST_MARK && takesNoRoom(point) ? 0 : widths.of(point);
    }
    return takesNoRoom(point) ? 0 : square;
  }

  /** A width in units of the face at a size. */
  double width(long units, double size) {
    return units * size / widths.unitsPerEm();
  }

  private static boolean takesNoRoom(int point) {
    int type = Character.getType(point);
    return type == Character.NON_SPACING_MARK || type == Character.FORMAT;
  }
}
