package gapwise.figure.file;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Svg;
import gapwise.figure.forest.Forest;
import gapwise.figure.forest.InventedForests;
import gapwise.figure.span.Span;
import gapwise.figure.span.SpanDrawing;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

class PngTest {
  private static final Forest FOREST = InventedForests.twoMethods();

  @Test
  void aPictureHasTheWidthAskedForAndItsMarksInTheirColours() throws IOException {
    Picture picture = FOREST.draw(Medium.PAGE).get(0);
    byte[] bytes = Png.of(picture, pixels(1620), Map.of());
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(bytes));
    assertEquals(1620, image.getWidth());
    assertEquals((int) Math.ceil(1620 * picture.height() / picture.width()), image.getHeight());
    Set<Integer> colours = colours(image);
    for (String colour : new String[] {Ink.GROUND, Ink.INK, Ink.ACCENT, Ink.BONE_GREY, Ink.BONE}) {
      assertTrue(colours.contains(Integer.parseInt(colour.substring(1), 16)), colour);
    }
  }

  /** A size of so many pixels across, at the 96 to an inch of a drawing. */
  private static PngSize pixels(int across) {
    return new PngSize(across / 96.0 * 25.4, 96);
  }

  private static Set<Integer> colours(BufferedImage image) {
    Set<Integer> colours = new HashSet<>();
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        colours.add(image.getRGB(x, y) & 0xFFFFFF);
      }
    }
    return colours;
  }

  @Test
  void theFileCarriesTitleAndCaptionAsTextChunks() {
    // PNG specification (W3C), 11.3.4.5: iTXt holds a keyword and text in UTF-8.
    String bytes =
        new String(
            FigureFile.of(
                FOREST, FileKind.PNG, new FigureFile.Wish(Medium.PHONE, 1, Optional.empty())),
            StandardCharsets.UTF_8);
    assertTrue(bytes.contains("iTXtTitle\u0000"));
    assertTrue(bytes.contains(FOREST.heading().title()));
    assertTrue(bytes.contains(FigureProvenance.INVENTED));
  }

  @Test
  void aDrawingOfThreeHundredSeriesCanBePainted() throws IOException {
    Forest many = InventedForests.many(300, 7);
    Picture picture = many.draw(Medium.PAGE).get(0);
    BufferedImage image =
        ImageIO.read(new ByteArrayInputStream(Png.of(picture, pixels(540), Map.of())));
    assertEquals(540, image.getWidth());
    assertTrue(colours(image).size() > 50, "something is drawn");
  }

  @Test
  void aPicturePaintedInBandsIsThatPaintedAtOnce() throws IOException {
    Picture picture = FOREST.draw(Medium.PAGE).get(0);
    int height = (int) Math.ceil(700 * picture.height() / picture.width());
    BufferedImage whole = painted(picture, height, 700 * height);
    BufferedImage banded = painted(picture, height, 700 * 37);
    assertEquals(height, banded.getHeight());
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < 700; x++) {
        assertEquals(whole.getRGB(x, y), banded.getRGB(x, y), "at " + x + ", " + y);
      }
    }
  }

  private static BufferedImage painted(Picture picture, int height, int pixelsABand)
      throws IOException {
    byte[] bytes = Png.painted(picture, 700, height, pixels(700), Map.of(), pixelsABand);
    return ImageIO.read(new ByteArrayInputStream(bytes));
  }

  @Test
  void theSameDrawingGivesTheSameBytes() {
    Picture picture = SpanDrawing.draw(new Span.Threshold(4), 12, 150);
    Map<String, String> texts = Map.of("Title", "over 4 cm", "Description", "a span");
    assertArrayEquals(Png.of(picture, pixels(300), texts), Png.of(picture, pixels(300), texts));
  }

  @Test
  void picturesThatAreTooSmallOrTooLargeAreRefused() {
    Picture picture = FOREST.draw(Medium.PAGE).get(0);
    assertThrows(IllegalArgumentException.class, () -> Png.of(picture, pixels(3), Map.of()));
    assertThrows(
        IllegalArgumentException.class, () -> Png.of(picture, pixels(2_000_000), Map.of()));
  }

  @Test
  void wordsTakeTheRoomThatWasMeasuredForThem() throws IOException {
    for (boolean bold : new boolean[] {false, true}) {
      Lettering letters = bold ? Lettering.bold(40) : Lettering.plain(40);
      String words = "HH 90 (83 to 95) membrane wedges, of 100 limbs HH";
      double width = letters.width(words);
      Svg svg = new Svg().begin(width + 40, 60, "px", "img", "words");
      svg.rect(0, 0, width + 40, 60, "#FFFFFF");
      svg.text(20, 45, Svg.Anchor.START, letters, words);
      Picture picture = new Picture(svg.end(), width + 40, 60);
      BufferedImage image =
          ImageIO.read(
              new ByteArrayInputStream(
                  Png.of(picture, pixels((int) Math.round(width + 40)), Map.of())));
      int first = image.getWidth();
      int last = 0;
      for (int x = 0; x < image.getWidth(); x++) {
        for (int y = 0; y < image.getHeight(); y++) {
          if ((image.getRGB(x, y) & 0xFF) < 128) {
            first = Math.min(first, x);
            last = Math.max(last, x);
          }
        }
      }
      // An H keeps room on each side of it: 0.08 of the size, in both faces within a hundredth.
      double aside = 0.08 * 40;
      assertEquals(20 + aside, first, 2);
      assertEquals(20 + width - aside, last, 2);
    }
  }
}
