package gapwise.carried;

import gapwise.curation.ExtractionBase;
import gapwise.extraction.Extraction;
import gapwise.extraction.FieldChoice;
import gapwise.extraction.SameRow;
import gapwise.extraction.TwiceRead;
import gapwise.reference.kept.KeptJson;
import gapwise.store.DocumentStore;
import gapwise.store.DocumentVersion;
import java.util.HashSet;
import java.util.Set;

/**
 * The papers extracted by two people apart of which both extractions may be seen. What stands of
 * any other is carried nowhere: an export that one of the two reads would show her the other's.
 *
 * @param studies the names of their studies
 */
record SettledPapers(Set<String> studies) {
  SettledPapers {
    studies = Set.copyOf(studies);
  }

  /** Those of a store. */
  static SettledPapers of(DocumentStore store) {
    Set<String> studies = new HashSet<>();
    store.forEachLatest(
        ExtractionBase.PAPER,
        document -> {
          if (!document.damaged() && document.json().isPresent()) {
            TwiceRead paper = KeptJson.read(document.json().get(), TwiceRead.class);
            if (paper.isOpenToAll()) {
              studies.add(paper.study());
            }
          }
        });
    return new SettledPapers(studies);
  }

  /** Whether a document is carried: of these papers, or of no such paper at all. */
  boolean carries(CarriedKind kind, DocumentVersion document) {
    String json = document.json().orElse("");
    return switch (kind) {
      case READ_TWICE -> studies.contains(document.id().key());
      case EXTRACTION -> studies.contains(KeptJson.read(json, Extraction.class).study());
      case FIELD_CHOICE -> studies.contains(KeptJson.read(json, FieldChoice.class).study());
      case SAME_ROW -> studies.contains(KeptJson.read(json, SameRow.class).study());
      default -> true;
    };
  }
}
