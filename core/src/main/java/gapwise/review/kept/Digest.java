package gapwise.review.kept;

import java.util.List;
import java.util.Objects;

/**
 * What an answer said, in short: enough to tell later what moved.
 *
 * @param state the state of the evidence
 * @param studies those whose numbers it holds, by id
 * @param numbers what it says, each name once
 */
public record Digest(EvidenceState state, List<DigestStudy> studies, List<DigestNumber> numbers) {
  public Digest {
    Objects.requireNonNull(state, "state");
    studies = List.copyOf(studies);
    numbers = List.copyOf(numbers);
    if (studies.stream().map(DigestStudy::id).distinct().count() != studies.size()
        || numbers.stream().map(DigestNumber::name).distinct().count() != numbers.size()) {
      throw new IllegalArgumentException("studies and numbers stand in a digest once");
    }
  }
}
