package gapwise.server.report;

import gapwise.decision.sheet.PatientRow;
import gapwise.decision.sheet.ShareCell;
import gapwise.figure.array.ArrayDrawing;
import gapwise.figure.array.HundredArray;
import gapwise.figure.array.StripDrawing;
import gapwise.figure.drawing.Picture;
import java.util.List;

/** The drawings of a sheet, the same wherever it is shown. */
public final class SheetPictures {
  private SheetPictures() {}

  /** One entry of the key of the marks. */
  public record Key(String svg, String words) {}

  /** The marks of a share that has some. */
  public static Picture array(ShareCell cell) {
    return ArrayDrawing.draw(cell.array().orElseThrow(), cell.alternative());
  }

  /** What a method takes. */
  public static Picture strip(PatientRow row) {
    return StripDrawing.draw(row.strip(), row.stripWords());
  }

  /** The key of the marks. */
  public static List<Key> keys() {
    return List.of(
        key(new HundredArray(1, 0, 0), "filled: at least so many"),
        key(new HundredArray(0, 1, 0), "hatched: could be so many"),
        key(new HundredArray(0, 0, 0), "empty: the rest"));
  }

  private static Key key(HundredArray array, String words) {
    return new Key(ArrayDrawing.key(array, words).inline(), words);
  }
}
