package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.curation.KeptStudy;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.extraction.TwiceRead;
import gapwise.server.home.Extractions;
import gapwise.server.page.extraction.ExtractionAddress;
import java.util.Map;
import java.util.Optional;

/**
 * That two people read a study apart, and who settled what differed.
 *
 * @param words who, and whether the record is still what they agreed on
 * @param href where each difference is told; empty where none is kept here
 */
public record ReadApart(String words, Optional<String> href) {
  /** Of a study as it stands; empty where nobody says that it was read apart. */
  static Optional<ReadApart> of(KeptStudy kept, Extractions extractions) {
    String id = kept.study().id();
    boolean agreed = kept.study().status() == ExtractionStatus.AGREED;
    Optional<TwiceRead> paper = extractions.find(id).map(one -> one.paper());
    Optional<TwiceRead.Finished> end = paper.flatMap(TwiceRead::finished);
    if (end.isEmpty()) {
      return agreed
          ? Optional.of(new ReadApart(say("studies.agreed-elsewhere"), Optional.empty()))
          : Optional.empty();
    }
    Map<String, String> who =
        Map.of(
            "first", paper.orElseThrow().first().name(),
            "second", paper.orElseThrow().second().name(),
            "settler", end.get().who().name());
    boolean same = end.get().holds(kept.study());
    String words =
        same
            ? say("studies.read-apart", who)
            : say("studies.read-apart", who)
                + " "
                + say(
                    "studies.changed-since",
                    Map.of("version", Integer.toString(end.get().version())));
    return Optional.of(new ReadApart(words, Optional.of(ExtractionAddress.of(id))));
  }
}
