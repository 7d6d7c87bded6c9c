package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.curation.ReviewBase;
import gapwise.figure.value.Shown;
import gapwise.review.ReviewOutcome;
import gapwise.server.address.Address;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Differences that matter by the review, offered where a page asks for some. They come into the
 * address only when somebody takes them, so that an address says the same whatever the review says
 * later.
 *
 * @param words which they are, or that they are those of the address
 * @param href the page with them; empty where the address has them already
 */
public record ThresholdOffer(String words, Optional<String> href) {
  public ThresholdOffer {
    Objects.requireNonNull(words, "words");
    Objects.requireNonNull(href, "href");
  }

  /**
   * What can be offered.
   *
   * @param review where the review is
   * @param names the name in the address for each outcome, by its code
   * @param address what the page asks
   * @param path path of the page
   * @return empty where the review names no difference of these outcomes
   */
  public static Optional<ThresholdOffer> of(
      ReviewBase review, Map<String, String> names, Address address, String path) {
    List<ReviewOutcome> named =
        review.latest().stream()
            .flatMap(version -> version.review().outcomes().stream())
            .filter(one -> one.matters().isPresent() && names.containsKey(one.outcome()))
            .toList();
    if (named.isEmpty()) {
      return Optional.empty();
    }
    Map<String, String> values = new LinkedHashMap<>();
    for (ReviewOutcome one : named) {
      values.put(
          Objects.requireNonNull(names.get(one.outcome()), one.outcome()),
          Shown.centimetres(one.matters().getAsDouble()));
    }
    Address taken = address;
    for (Map.Entry<String, String> value : values.entrySet()) {
      taken = taken.with(value.getKey(), value.getValue());
    }
    String told =
        named.stream()
            .map(one -> one.label() + " " + one.threshold())
            .collect(Collectors.joining(", "));
    return Optional.of(
        taken.equals(address)
            ? new ThresholdOffer(
                say("review.thresholds-taken", Map.of("differences", told)), Optional.empty())
            : new ThresholdOffer(
                say("review.thresholds", Map.of("differences", told)),
                Optional.of(taken.at(path))));
  }
}
