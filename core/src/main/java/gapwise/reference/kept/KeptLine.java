package gapwise.reference.kept;

import gapwise.reference.Author;
import gapwise.reference.Identifiers;
import gapwise.reference.Published;
import gapwise.reference.Reference;
import gapwise.reference.likeness.Letters;
import gapwise.reference.pair.FiledReference;
import gapwise.reference.pair.RecordKey;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What of a kept reference is held in memory: all but its long texts.
 *
 * @param id its id
 * @param brief the reference without abstract, keywords and other fields
 * @param source where it was read first
 * @param stoodOn hash of what it says, long texts among it
 * @param complete how many of its parts are told; of one group the fullest leads
 * @param words title, authors, year and journal in plain letters, to be searched
 */
public record KeptLine(
    String id, Reference brief, RecordSource source, String stoodOn, int complete, String words) {
  public KeptLine {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(brief, "brief");
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(stoodOn, "stoodOn");
    Objects.requireNonNull(words, "words");
  }

  /** The line of a kept reference. */
  public static KeptLine of(KeptReference kept) {
    Reference reference = kept.reference();
    return new KeptLine(
        kept.id(),
        reference.withoutTexts(),
        kept.sources().get(0),
        Fingerprint.of(reference),
        complete(reference),
        words(kept));
  }

  private static int complete(Reference reference) {
    Published place = reference.published();
    Identifiers numbers = reference.identifiers();
    long told =
        Stream.of(
                numbers.doi().isPresent(),
                numbers.pmid().isPresent(),
                reference.summary().isPresent(),
                !reference.authors().isEmpty(),
                place.year().isPresent(),
                place.journal().isPresent(),
                place.volume().isPresent(),
                place.pages().isPresent(),
                !reference.keywords().isEmpty(),
                reference.kind().isPresent())
            .filter(part -> part)
            .count();
    return (int) told;
  }

  private static String words(KeptReference kept) {
    Reference reference = kept.reference();
    String people = reference.authors().stream().map(Author::line).collect(Collectors.joining(" "));
    String year = kept.year().isPresent() ? "" + kept.year().getAsInt() : "";
    String titles =
        Stream.concat(Stream.of(reference.titles().main()), reference.titles().original().stream())
            .collect(Collectors.joining(" "));
    return Letters.folded(
        String.join(" ", List.of(titles, people, year, kept.journal().orElse(""))));
  }

  /** The reference as it is compared, under its id. */
  FiledReference filed() {
    String shown = source.file().replaceFirst("\\.[A-Za-z0-9]{1,8}$", "");
    return new FiledReference(
        new RecordKey(id, shown, source.number(), source.line(), brief.id()), brief);
  }
}
