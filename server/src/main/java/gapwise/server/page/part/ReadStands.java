package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.selection.HowRead;
import gapwise.server.address.Address;
import gapwise.server.address.QuestionAddress;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How the studies behind a result were read, with the same on the agreed alone one click away.
 *
 * @param words how many are agreed, checked, extracted once, or read second-hand; empty where there
 *     is no study
 * @param link the same question to other studies; empty where there is nothing to take or leave
 */
public record ReadStands(Optional<String> words, Optional<Link> link) {
  /** The same question to other studies. */
  public record Link(String words, String href) {}

  /** Of the studies of a result. */
  public static ReadStands of(String path, Address address, HowRead read) {
    boolean narrowed = !address.first(QuestionAddress.STATUS).isEmpty();
    if (narrowed) {
      return new ReadStands(
          read.words(),
          Optional.of(
              new Link(
                  say("page.every-status"),
                  address.without(List.of(QuestionAddress.STATUS)).at(path))));
    }
    boolean some = read.agreed() > 0 && read.agreed() < read.studies();
    return new ReadStands(
        read.words(),
        some
            ? Optional.of(
                new Link(
                    say("page.agreed-alone"),
                    address.with(QuestionAddress.STATUS, ExtractionStatus.AGREED.code()).at(path)))
            : Optional.empty());
  }

  /** What an address says of it, to be taken off. */
  public static Optional<FilterForm.On> taken(String path, Address address) {
    return Coded.parse(ExtractionStatus.class, address.first(QuestionAddress.STATUS))
        .map(
            status ->
                new FilterForm.On(
                    status == ExtractionStatus.AGREED
                        ? say("page.agreed-alone")
                        : say("page.status-alone", Map.of("status", status.label())),
                    path,
                    address.without(List.of(QuestionAddress.STATUS))));
  }
}
