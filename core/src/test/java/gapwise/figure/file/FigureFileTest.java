package gapwise.figure.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.figure.EveryFigure;
import gapwise.figure.Figure;
import gapwise.figure.Reference;
import gapwise.figure.drawing.Medium;
import gapwise.figure.forest.Forest;
import gapwise.figure.forest.InventedForests;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.reference.Author;
import gapwise.reference.format.ReadRecord;
import gapwise.reference.format.ReferenceFile;
import gapwise.reference.format.ReferenceReader;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Files of figures, read back. */
class FigureFileTest {
  private static final Map<String, Figure> FIGURES = EveryFigure.byName();

  /** A chunk of a PNG (W3C, PNG specification, section 5.3: length, type, data, CRC). */
  private record Chunk(String type, byte[] data) {
    static List<Chunk> of(byte[] png) {
      ByteBuffer bytes = ByteBuffer.wrap(png);
      assertEquals(0x89504E470D0A1A0AL, bytes.getLong(), "signature");
      List<Chunk> chunks = new ArrayList<>();
      while (bytes.hasRemaining()) {
        byte[] typed = new byte[bytes.getInt() + 4];
        bytes.get(typed);
        CRC32 crc = new CRC32();
        crc.update(typed);
        assertEquals((int) crc.getValue(), bytes.getInt(), "CRC");
        byte[] data = new byte[typed.length - 4];
        System.arraycopy(typed, 4, data, 0, data.length);
        chunks.add(new Chunk(new String(typed, 0, 4, StandardCharsets.US_ASCII), data));
      }
      return chunks;
    }

    /** Keyword and text of an iTXt chunk that is not compressed (section 11.3.3.4). */
    static Map<String, String> texts(List<Chunk> chunks) {
      Map<String, String> texts = new TreeMap<>();
      for (Chunk chunk : chunks) {
        if (chunk.type.equals("iTXt")) {
          String[] parts = new String(chunk.data, StandardCharsets.UTF_8).split("\u0000", -1);
          texts.put(parts[0], parts[parts.length - 1]);
        }
      }
      return texts;
    }
  }

  static Stream<String> names() {
    return FIGURES.keySet().stream();
  }

  private static FigureFile.Wish sized(Medium medium, double millimetres, double dots) {
    PngSize size =
        PngSize.asked(
            medium, OptionalDouble.of(millimetres), OptionalInt.empty(), OptionalDouble.of(dots));
    return new FigureFile.Wish(medium, 1, Optional.of(size));
  }

  @ParameterizedTest
  @MethodSource("names")
  void aPictureHasTheSizeAndDotsAskedForAndCarriesItsCaption(String name) throws IOException {
    Figure figure = FIGURES.get(name);
    byte[] png = FigureFile.of(figure, FileKind.PNG, sized(Medium.COLUMN, 85, 150));
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
    assertEquals(502, image.getWidth()); // 85 / 25.4 * 150 = 501.97
    List<Chunk> chunks = Chunk.of(png);
    byte[] dots = chunks.stream().filter(c -> c.type.equals("pHYs")).findFirst().get().data;
    ByteBuffer read = ByteBuffer.wrap(dots);
    assertEquals(5906, read.getInt()); // 150 / 0.0254 = 5905.5 pixels a metre
    assertEquals(5906, read.getInt());
    assertEquals(1, read.get(), "the unit is the metre");
    Map<String, String> texts = Chunk.texts(chunks);
    assertEquals(figure.title(), texts.get("Title"));
    assertEquals(figure.caption(), texts.get("Description"));
    assertTrue(texts.get("References").contains("First invented series"));
    assertTrue(texts.get("Warning").contains(figure.cautions().get(0)));
  }

  @Test
  void pixelsAloneAreTakenAsTheyAre() {
    PngSize size =
        PngSize.asked(
            Medium.SLIDE, OptionalDouble.empty(), OptionalInt.of(2560), OptionalDouble.empty());
    assertEquals(2560, size.pixelWidth());
    assertEquals(1920, PngSize.usual(Medium.SLIDE).pixelWidth());
  }

  private static Problem refused(
      Medium medium, OptionalDouble millimetres, OptionalInt pixels, OptionalDouble dots) {
    WrongInputException wrong =
        assertThrows(
            WrongInputException.class, () -> PngSize.asked(medium, millimetres, pixels, dots));
    return wrong.problems().get(0);
  }

  @Test
  void sizesOutOfBoundsAreRefusedWithTheBounds() {
    OptionalDouble no = OptionalDouble.empty();
    OptionalInt none = OptionalInt.empty();
    Problem narrow = refused(Medium.COLUMN, OptionalDouble.of(60), none, no);
    assertTrue(narrow.message().contains("under 7 pt"), narrow.message());
    assertEquals("width-mm", narrow.where());
    assertEquals("dpi", refused(Medium.A4, no, none, OptionalDouble.of(5000)).where());
    assertEquals("width-px", refused(Medium.PAGE, no, OptionalInt.of(90_000), no).where());
    assertEquals("width-px", refused(Medium.PAGE, no, OptionalInt.of(10), no).where());
    Problem twice =
        refused(Medium.PAGE, OptionalDouble.of(100), OptionalInt.of(900), OptionalDouble.of(300));
    assertEquals("size-said-twice", twice.code());
  }

  @Test
  void aPictureOfTooManyPixelsIsRefusedWithTheWidestThatCanBe() {
    WrongInputException wrong =
        assertThrows(
            WrongInputException.class,
            () -> FigureFile.of(FIGURES.get("forest"), FileKind.PNG, sized(Medium.A4, 1000, 1200)));
    assertTrue(wrong.getMessage().contains("fewer dots per inch"), wrong.getMessage());
  }

  @Test
  void aSheetThatThereIsNotIsRefusedWithTheNumberOfSheets() {
    FigureFile.Wish second = new FigureFile.Wish(Medium.PAGE, 2, Optional.empty());
    WrongInputException wrong =
        assertThrows(
            WrongInputException.class,
            () -> FigureFile.of(FIGURES.get("funnel"), FileKind.SVG, second));
    assertTrue(wrong.getMessage().contains("one sheet"), wrong.getMessage());
  }

  @Test
  void aFigureOfHundredsOfSeriesIsPaintedAsWideAsItCanBe() throws IOException {
    Forest many = InventedForests.many(900, 7);
    byte[] png =
        FigureFile.of(many, FileKind.PNG, new FigureFile.Wish(Medium.PHONE, 1, Optional.empty()));
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
    assertTrue(image.getWidth() < 1080 && image.getWidth() > 500, "" + image.getWidth());
  }

  @Test
  void citationsAreWrittenInRisTags() {
    // The tags as the format's description lists them: TY first, ER last, "XX  - value".
    String ris = new References(EveryFigure.REFERENCES).ris();
    List<String> lines = ris.lines().toList();
    assertEquals("TY  - JOUR", lines.get(0));
    assertTrue(lines.containsAll(List.of("AU  - Sedge, A", "AU  - Rill, Bea", "PY  - 2019")));
    assertTrue(lines.containsAll(List.of("SP  - 11", "EP  - 19", "DO  - 10.0000/nowhere.1")));
    assertEquals(2, lines.stream().filter("ER  - "::equals).count());
    assertTrue(lines.stream().allMatch(line -> line.isEmpty() || line.matches("[A-Z]\\w  - .*")));
    assertEquals(2, lines.stream().filter(line -> line.startsWith("N1  - Invented")).count());
  }

  @Test
  void citationsAreWrittenAsCslJson() throws IOException {
    String json = new References(EveryFigure.REFERENCES).cslJson();
    JsonNode list = JsonMapper.builder().build().readTree(json);
    assertEquals(2, list.size());
    assertEquals("article-journal", list.at("/0/type").asText());
    assertEquals(2019, list.at("/0/issued/date-parts/0/0").asInt());
    assertEquals("Sedge", list.at("/0/author/0/family").asText());
    assertEquals("A", list.at("/0/author/0/given").asText());
    assertEquals("Rill", list.at("/0/author/1/family").asText());
    assertEquals("Second & third <series>", list.at("/1/title").asText());
  }

  @Test
  void citationsAreReadBackWithTheSamePeople() throws IOException {
    List<Reference.Author> authors =
        List.of(
            new Reference.Author("Sedge", "A", ""),
            new Reference.Author("van den Rill", "", ""),
            new Reference.Author("Fen", "Cor", "Jr"),
            new Reference.Author("Fen", "", "III"),
            new Reference.Author("Sedge Study Group", "", "", true));
    Reference one = EveryFigure.REFERENCES.get(0);
    References list =
        new References(
            List.of(
                new Reference(
                    one.key(),
                    one.line(),
                    one.title(),
                    authors,
                    one.year(),
                    one.journal(),
                    one.volume(),
                    one.issue(),
                    one.pages(),
                    one.doi(),
                    one.pmid(),
                    true)));
    for (String text : List.of(list.ris(), list.cslJson())) {
      List<Author> back = new ArrayList<>();
      ReferenceReader.read(
          ReferenceFile.of("citations", text),
          record -> back.addAll(((ReadRecord.Read) record).reference().authors()));
      assertEquals(
          List.of(
              new Author.Person("", "Sedge", "A", ""),
              new Author.Person("van den", "Rill", "", ""),
              new Author.Person("", "Fen", "Cor", "Jr"),
              new Author.Person("", "Fen", "", "III"),
              new Author.Group("Sedge Study Group")),
          back,
          text);
    }
  }
}
