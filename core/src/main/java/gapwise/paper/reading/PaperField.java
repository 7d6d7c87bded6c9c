package gapwise.paper.reading;

import gapwise.paper.Place;
import gapwise.printed.Doubt;
import gapwise.untidy.FoundField;
import java.util.Objects;
import java.util.Optional;

/**
 * A value found in a paper.
 *
 * @param field what it is, and whether it may be taken
 * @param place where it stands; absent only where its cell holds no words
 */
public record PaperField(FoundField field, Optional<Place> place) {
  public PaperField {
    Objects.requireNonNull(field, "field");
    Objects.requireNonNull(place, "place");
  }

  /** The same asked, unless it is asked or left already. */
  PaperField askedBecause(String why) {
    FoundField asked =
        new FoundField(
            field.into(),
            field.whose(),
            field.outcome(),
            field.row(),
            field.value().askedBecause(Doubt.NUMBER, why),
            field.sheet(),
            field.cell(),
            field.carriedFrom(),
            field.words());
    return new PaperField(asked, place);
  }
}
