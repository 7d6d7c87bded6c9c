package gapwise.figure;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import java.util.List;
import java.util.Map;

/**
 * What every plot is: a value that names itself, can be drawn for each medium and listed. The room
 * {@code file} makes every kind of file of it, so a new plot gets all of them by being a figure.
 */
public interface Figure {
  /** What is shown, in one line. */
  String title();

  /** The figure in a few sentences, for those who cannot see it. */
  String description();

  /** What must be known beside it. */
  List<String> cautions();

  /** Where its numbers come from. */
  FigureProvenance provenance();

  /**
   * Its drawings: one, or as many sheets as it takes; a sheet may be drawn only when it is taken.
   */
  List<Picture> draw(Setting setting);

  /** Its drawings as they are taken away, with everything that must be known beside them. */
  default List<Picture> draw(Medium medium) {
    return draw(Setting.alone(medium));
  }

  /** How many drawings a medium takes. */
  default int sheets(Medium medium) {
    return 1;
  }

  /** Its data as CSV (RFC 4180); each line says what figure, model and data it belongs to. */
  String csv();

  /** The studies that are shown. */
  default List<Reference> references() {
    return provenance().references();
  }

  /** The line under it: how many, model, data version, date. */
  default List<String> source() {
    return provenance().phrases();
  }

  /** The caption that travels with it: result, cautions, size, model, data version, date. */
  default String caption() {
    return say(
        "figure.caption",
        Map.of("description", description(), "source", String.join(". ", source())));
  }
}
