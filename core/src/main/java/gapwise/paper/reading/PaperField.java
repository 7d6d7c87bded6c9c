package gapwise.paper.reading;

import gapwise.paper.Place;
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
}
