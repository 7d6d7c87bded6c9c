package gapwise.server.page.screening;

import gapwise.reference.kept.KeptReference;
import gapwise.screening.MarkedText;
import gapwise.screening.Protocol;
import gapwise.server.address.PagePaths;
import java.util.List;
import java.util.Optional;

/**
 * A reference as it is read while one screens.
 *
 * @param id of the kept reference
 * @param href its own page
 * @param title with the words of the team marked
 * @param people its authors; may be empty
 * @param place journal and year; may be empty
 * @param summary its abstract with the words marked; empty where its record has none
 * @param copies how many further records are of this paper
 */
public record Paper(
    String id,
    String href,
    List<MarkedText.Stretch> title,
    String people,
    String place,
    List<MarkedText.Stretch> summary,
    int copies) {
  static Paper of(KeptReference kept, Protocol protocol, int copies) {
    String year = kept.year().isPresent() ? Integer.toString(kept.year().getAsInt()) : "";
    String place = String.join(" ", kept.journal().orElse(""), year).strip();
    return new Paper(
        kept.id(),
        PagePaths.KEPT_REFERENCES + "/" + kept.id(),
        MarkedText.of(kept.title(), protocol),
        kept.authors(),
        place,
        kept.summary().map(text -> MarkedText.of(text, protocol)).orElse(List.of()),
        copies);
  }

  /** Nothing of it can be read any more. */
  static Optional<Paper> of(Optional<KeptReference> kept, Protocol protocol, int copies) {
    return kept.map(one -> of(one, protocol, copies));
  }
}
