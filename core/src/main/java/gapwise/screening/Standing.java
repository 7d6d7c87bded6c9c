package gapwise.screening;

import java.util.List;
import java.util.Optional;

/** Where a paper stands at a stage, by all that was chosen of it. */
public sealed interface Standing {
  /**
   * Fewer than two have chosen.
   *
   * @param votes 0 or 1
   */
  record Waiting(int votes) implements Standing {}

  /** Two have chosen, and not alike. */
  record Apart(List<Vote> votes) implements Standing {
    public Apart {
      votes = List.copyOf(votes);
    }
  }

  /**
   * It is decided.
   *
   * @param choice keep, leave out, or not to be had
   * @param reason why it stays out
   * @param ruling who settled it, where two had chosen differently
   */
  record Decided(Choice choice, Optional<String> reason, Optional<Ruling> ruling)
      implements Standing {}

  /** Whether the paper goes on. */
  default boolean keeps() {
    return this instanceof Decided decided && decided.choice().keeps();
  }

  /** People whose choice decides. */
  int READERS = 2;

  /**
   * Where a paper stands: decided by a ruling; else by two or more people who all keep it, or all
   * leave it out for one reason, or all could not have its text. Who is unsure keeps it: a paper is
   * not lost before it was read.
   *
   * @param votes the last of each person
   */
  static Standing of(List<Vote> votes, Optional<Ruling> ruling) {
    if (ruling.isPresent()) {
      return new Decided(ruling.get().choice(), ruling.get().reason(), ruling);
    }
    if (votes.size() < READERS) {
      return new Waiting(votes.size());
    }
    Vote first = votes.get(0);
    if (votes.stream().allMatch(vote -> vote.choice().keeps())) {
      return new Decided(Choice.KEEP, Optional.empty(), Optional.empty());
    }
    boolean alike =
        votes.stream()
            .allMatch(
                vote ->
                    vote.choice() == first.choice()
                        && (!first.stage().asksReason() || vote.reason().equals(first.reason())));
    return alike ? new Decided(first.choice(), first.reason(), Optional.empty()) : new Apart(votes);
  }
}
