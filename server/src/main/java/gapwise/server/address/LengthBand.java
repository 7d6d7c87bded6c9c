package gapwise.server.address;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.unit.LengthRange;
import gapwise.figure.value.Shown;
import java.util.List;
import java.util.Map;

/**
 * A band of missing length; its upper end belongs to the next band.
 *
 * @param lengths from its lower end to its upper
 */
public record LengthBand(LengthRange lengths) {
  /** Bands that reviewers commonly use (common practice, no source). */
  public static final List<LengthBand> USUAL =
      List.of(
          new LengthBand(new LengthRange(0, 2)),
          new LengthBand(new LengthRange(2, 4)),
          new LengthBand(new LengthRange(4, 6)),
          new LengthBand(new LengthRange(6, 8)),
          new LengthBand(new LengthRange(8, 12)),
          new LengthBand(LengthRange.from(12)));

  /** An address with its missing bone set to this band. */
  public Address in(Address address) {
    Address open = address.without(List.of("from", "to"));
    Address from = isLowest() ? open : open.with("from", from());
    return isHighest() ? from : from.with("to", to());
  }

  /** In few words: "under 2", "2 to 4", "12 and more". */
  public String label() {
    if (isHighest()) {
      return say("studies.band-from", Map.of("from", from()));
    }
    return isLowest()
        ? say("studies.band-under", Map.of("to", to()))
        : say("studies.band-between", Map.of("from", from(), "to", to()));
  }

  private boolean isLowest() {
    return lengths.fromCentimetres() == 0;
  }

  private boolean isHighest() {
    return Double.isInfinite(lengths.toCentimetres());
  }

  private String from() {
    return Shown.centimetres(lengths.fromCentimetres());
  }

  private String to() {
    return Shown.centimetres(lengths.toCentimetres());
  }
}
