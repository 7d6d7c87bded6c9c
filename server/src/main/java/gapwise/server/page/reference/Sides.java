package gapwise.server.page.reference;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.StudyAddress;
import gapwise.curation.ReferenceBase;
import gapwise.evidence.Citation;
import gapwise.evidence.Study;
import gapwise.reference.Author;
import gapwise.reference.Identifiers;
import gapwise.reference.Reference;
import gapwise.reference.kept.KeptReference;
import gapwise.reference.kept.Member;
import gapwise.reference.kept.RecordSource;
import gapwise.reference.pair.Citations;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Evidence;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Members of pairs as a page shows them.
 *
 * @param base where references are read whole
 * @param evidence the studies
 */
record Sides(ReferenceBase base, Evidence evidence) {
  /** Authors that are told by name; the page of the reference has all. */
  private static final int MOST_AUTHORS = 8;

  /** The member; one that is no more is told by its name alone. */
  PairsView.Side of(String member) {
    Optional<String> study = Member.study(member);
    if (study.isPresent()) {
      return evidence
          .study(study.get())
          .map(Sides::study)
          .orElseGet(() -> bare(study.get(), StudyAddress.of(study.get())));
    }
    return base.find(member).map(Sides::kept).orElseGet(() -> bare(member, href(member)));
  }

  /** Address of the page of a kept reference. */
  static String href(String reference) {
    return PagePaths.KEPT_REFERENCES + "/" + reference;
  }

  private static PairsView.Side bare(String name, String href) {
    return new PairsView.Side(name, href, "", "", "", "", "");
  }

  private static PairsView.Side study(Study study) {
    Citation citation = study.citation();
    Reference reference = Citations.reference(study.id(), citation);
    return new PairsView.Side(
        citation.title(),
        StudyAddress.of(study.id()),
        citation.authorLine().orElse(""),
        reference.published().line(),
        numbers(reference),
        say("references.from-study", Map.of("study", study.id())),
        "");
  }

  private static PairsView.Side kept(KeptReference kept) {
    return new PairsView.Side(
        kept.title(),
        href(kept.id()),
        authors(kept.reference()),
        kept.reference().published().line(),
        numbers(kept.reference()),
        from(kept.sources().get(0)),
        kept.summary().orElse(""));
  }

  static String from(RecordSource source) {
    return say(
        "references.from-file",
        Map.of(
            "file", source.file(),
            "format", source.format().label(),
            "number", Integer.toString(source.number()),
            "line", Integer.toString(source.line())));
  }

  static String authors(Reference reference) {
    String first =
        reference.authors().stream()
            .limit(MOST_AUTHORS)
            .map(Author::line)
            .collect(Collectors.joining("; "));
    int more = reference.authors().size() - MOST_AUTHORS;
    return more > 0
        ? say("references.more-authors", Map.of("authors", first, "more", more))
        : first;
  }

  static String numbers(Reference reference) {
    Identifiers all = reference.identifiers();
    return Stream.of(
            all.doi().map(doi -> "doi:" + doi),
            all.pmid().map(pmid -> "PMID " + pmid),
            all.pmcid(),
            all.trial())
        .flatMap(Optional::stream)
        .collect(Collectors.joining(", "));
  }
}
