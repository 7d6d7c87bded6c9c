package gapwise.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Words of pages against the places at which they were drawn. */
class PageTest {
  @TempDir Path folder;

  private static String texts(Page page) {
    return page.words().stream().map(Word::text).collect(Collectors.joining(" "));
  }

  private static Word word(Page page, String text) {
    return page.words().stream().filter(w -> w.text().equals(text)).findFirst().orElseThrow();
  }

  private static void near(Box expected, Box found) {
    String both = expected + " and " + found;
    assertEquals(expected.left(), found.left(), 1, both);
    assertEquals(expected.top(), found.top(), 1, both);
    assertEquals(expected.right(), found.right(), 1, both);
    assertEquals(expected.bottom(), found.bottom(), 1, both);
  }

  @Test
  void wordsStandWhereTheyWereDrawn() throws IOException {
    try (Drawn drawn = new Drawn()) {
      Box first = drawn.text(60, 100, 9, "union");
      Box second = drawn.text(310.5, 500.25, 14, "Gap");
      Page page = drawn.read(folder, 1);
      near(first, word(page, "union").box());
      near(second, word(page, "Gap").box());
      assertEquals(595, page.width(), 0.1);
      assertEquals(842, page.height(), 0.1);
    }
  }

  /** A page that is turned by its own setting is read as it is displayed. */
  @ParameterizedTest
  @ValueSource(ints = {0, 90, 180, 270, -90})
  void aTurnedPageIsReadAsDisplayed(int rotation) throws IOException {
    try (Drawn drawn = new Drawn()) {
      Box box = drawn.text(100, 200, 10, "fibula");
      drawn.page().setRotation(rotation);
      Page page = drawn.read(folder, 1);
      Word word = word(page, "fibula");
      Box expected =
          switch (Math.floorMod(rotation, 360)) {
            case 90 -> Box.between(842 - box.top(), box.left(), 842 - box.bottom(), box.right());
            case 180 ->
                Box.between(
                    595 - box.left(), 842 - box.top(), 595 - box.right(), 842 - box.bottom());
            case 270 -> Box.between(box.top(), 595 - box.left(), box.bottom(), 595 - box.right());
            default -> box;
          };
      near(expected, word.box());
      Word.Turn turn =
          switch (Math.floorMod(rotation, 360)) {
            case 90 -> Word.Turn.DOWN;
            case 180 -> Word.Turn.OVER;
            case 270 -> Word.Turn.UP;
            default -> Word.Turn.NONE;
          };
      assertEquals(turn, word.turn());
      TurnedView view = TurnedView.of(page, turn);
      near(box, view.page().words().get(0).box());
      near(expected, view.back(view.page().words().get(0)).box());
    }
  }

  @Test
  void aCropBoxMovesTheCornerAndHidesWhatIsOutside() throws IOException {
    try (Drawn drawn = new Drawn()) {
      Box box = drawn.text(100, 200, 10, "fibula");
      drawn.text(20, 20, 10, "hidden");
      drawn.page().setCropBox(new PDRectangle(50, 40, 500, 700));
      Page page = drawn.read(folder, 1);
      double down = 842 - 740;
      near(
          new Box(box.left() - 50, box.top() - down, box.right() - 50, box.bottom() - down),
          word(page, "fibula").box());
      assertEquals("fibula", texts(page));
      assertEquals(500, page.width(), 0.1);
    }
  }

  @Test
  void aRaisedMarkStaysApartFromItsNumber() throws IOException {
    try (Drawn drawn = new Drawn()) {
      Box number = drawn.text(100, 200, 9, "47");
      drawn.text(number.right(), 196.5, 6, "1");
      Box two = drawn.text(200, 200, 9, "102");
      drawn.text(two.right(), 196.5, 6, "a,b");
      drawn.text(300, 200, 9, "88*");
      Box cm = drawn.text(400, 200, 9, "cm");
      drawn.text(cm.right(), 196.5, 6, "2");
      Page page = drawn.read(folder, 1);
      assertEquals("47 102 88 cm\u00B2", texts(page));
      assertEquals("1", word(page, "47").marks().get(0).text());
      assertEquals("471", word(page, "47").glued());
      assertEquals("a,b", word(page, "102").marks().get(0).text());
      assertEquals("*", word(page, "88").marks().get(0).text());
      near(number, word(page, "47").box());
    }
  }

  @Test
  void aMarkBeforeANoteIsNotTakenByTheWordBeforeIt() throws IOException {
    try (Drawn drawn = new Drawn()) {
      Box note = drawn.text(100, 200, 8, "applicable.");
      Box mark = drawn.text(note.right() + 2.2, 197, 5, "a");
      drawn.text(mark.right() + 0.2, 200, 8, "Measured later");
      Page page = drawn.read(folder, 1);
      assertEquals("applicable. a Measured later", texts(page));
    }
  }

  @Test
  void ligaturesAreLettersAndSoftHyphensAreNone() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.text(100, 200, 10, "\uFB01bula de\u00ADfect");
      assertEquals("fibula defect", texts(drawn.read(folder, 1)));
    }
  }

  @Test
  void turnedWordsAreWordsOfTheirOwn() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.upwards(50, 300, 8, "Not yet healed");
      drawn.text(100, 200, 10, "level");
      Page page = drawn.read(folder, 1);
      assertEquals("level Not yet healed", texts(page));
      Word yet = word(page, "yet");
      assertEquals(Word.Turn.UP, yet.turn());
      assertTrue(yet.box().bottom() < word(page, "Not").box().top() + 0.5);
    }
  }

  @Test
  void columnsAreReadOneAfterTheOther() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.bold(60, 60, 12, "A title that runs over both of the columns of this invented page");
      for (int i = 0; i < 8; i++) {
        drawn.text(60, 100 + 12 * i, 9, "left column line number " + i + " with words enough");
        drawn.text(320, 100 + 12 * i, 9, "right column line number " + i + " with words enough");
      }
      Page page = drawn.read(folder, 1);
      List<String> lines = page.lines().stream().map(Line::text).toList();
      assertEquals(2, page.columns().size());
      assertTrue(lines.get(0).startsWith("A title"));
      assertTrue(lines.get(1).startsWith("left column line number 0"));
      assertTrue(lines.get(8).startsWith("left column line number 7"), lines.toString());
      assertTrue(lines.get(9).startsWith("right column line number 0"));
    }
  }

  @Test
  void aScannedPageSaysThatItHoldsNoWords() throws IOException {
    try (Drawn drawn = new Drawn()) {
      var image =
          new java.awt.image.BufferedImage(60, 80, java.awt.image.BufferedImage.TYPE_INT_RGB);
      drawn
          .content()
          .drawImage(LosslessFactory.createFromImage(drawn.document(), image), 20, 20, 550, 800);
      Page page = drawn.read(folder, 1);
      assertEquals(Page.Lettering.SCANNED, page.lettering());
      assertTrue(page.notes().get(0).contains("scanned"), page.notes().toString());
    }
  }

  @Test
  void wordsLaidUnseenOverAScanAreSaidToBeGuessed() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.content().setRenderingMode(RenderingMode.NEITHER);
      drawn.text(100, 200, 10, "26 of 32");
      Page page = drawn.read(folder, 1);
      assertEquals(Page.Lettering.GUESSED, page.lettering());
      assertEquals("26 of 32", texts(page));
    }
  }

  @Test
  void aPictureHasTheSizeAskedFor() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.text(100, 200, 10, "word");
      Path file = drawn.save(folder);
      try (Paper paper = ((Opened) Paper.open(file)).paper()) {
        Picture picture = assertInstanceOf(Picture.class, paper.picture(1, 72));
        var image = ImageIO.read(picture.png());
        assertEquals(595, image.getWidth());
        assertEquals(842, image.getHeight());
        boolean ink = false;
        for (int x = 100; x < 125; x++) {
          ink |= (image.getRGB(x, 197) & 255) < 128;
        }
        assertTrue(ink, "the word is where its box is");
      }
    }
  }
}
