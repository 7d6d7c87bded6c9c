package gapwise.figure.file;

import gapwise.figure.Figure;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Words;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Every kind of file of any figure: what a figure is drawn for, how large, which sheet. */
public final class FigureFile {
  private FigureFile() {}

  /**
   * What is wished of a drawing or picture.
   *
   * @param medium what it is for
   * @param sheet which of its sheets, from 1
   * @param size of a picture; empty for the usual one of the medium
   */
  public record Wish(Medium medium, int sheet, Optional<PngSize> size) {}

  /**
   * The bytes of a file.
   *
   * @throws WrongInputException for a sheet that there is not, or a picture of too many pixels
   */
  public static byte[] of(Figure figure, FileKind kind, Wish wish) {
    References references = new References(figure.references());
    return switch (kind) {
      case SVG -> utf8(sheet(figure, wish).svg());
      case PNG -> png(figure, wish);
      case CSV -> utf8(figure.csv());
      case CITATIONS -> utf8(references.text(figure));
      case RIS -> utf8(references.ris());
      case CSL -> utf8(references.cslJson());
    };
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static Picture sheet(Figure figure, Wish wish) {
    List<Picture> sheets = figure.draw(wish.medium());
    if (wish.sheet() < 1 || wish.sheet() > sheets.size()) {
      throw wrong(
          "sheet",
          "no-such-sheet",
          "Found sheet "
              + wish.sheet()
              + ", but for '"
              + wish.medium().label()
              + "' this figure has "
              + (sheets.size() == 1 ? "one sheet" : sheets.size() + " sheets")
              + "; ask for one of these.");
    }
    return sheets.get(wish.sheet() - 1);
  }

  private static byte[] png(Figure figure, Wish wish) {
    Picture picture = sheet(figure, wish);
    PngSize size =
        wish.size().orElseGet(() -> PngSize.usual(wish.medium()).atMost(Png.widest(picture)));
    if (size.pixelWidth() > Png.widest(picture)) {
      throw wrong(
          "dpi",
          "picture-too-large",
          "A picture "
              + size.pixelWidth()
              + " pixels wide would be too large here: this figure can be at most "
              + Png.widest(picture)
              + " pixels wide. Ask for fewer dots per inch or a smaller width, or take the"
              + " drawing (SVG), which is sharp at every size.");
    }
    return Png.of(picture, size, texts(figure));
  }

  /** Keywords of the PNG specification (third edition, section 11.3.3.2) where one fits. */
  private static Map<String, String> texts(Figure figure) {
    Map<String, String> texts = new TreeMap<>();
    put(texts, "Title", figure.title());
    put(texts, "Description", figure.caption());
    put(texts, "Warning", String.join(" ", figure.cautions()));
    put(texts, "Software", figure.provenance().dataVersion());
    put(texts, "References", String.join("\n", FigureMetadata.citations(figure)));
    return texts;
  }

  private static void put(Map<String, String> texts, String keyword, String words) {
    if (!words.isBlank()) {
      texts.put(keyword, Words.atMost(words, Words.IN_A_TEXT));
    }
  }

  private static WrongInputException wrong(String where, String code, String message) {
    return new WrongInputException(List.of(new Problem(where, code, message)));
  }
}
