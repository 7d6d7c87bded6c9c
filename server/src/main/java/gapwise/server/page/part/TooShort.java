package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.ShortFollowUp;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.Selection;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.wording.FollowUps;
import java.util.Map;
import java.util.Optional;

/**
 * Said where series behind a result were followed too shortly for its outcome.
 *
 * @param words how many
 * @param link what the address takes
 * @param href the same question to those that were followed long enough
 */
public record TooShort(String words, String link, String href) {

  public static Optional<TooShort> of(
      String path, Address address, Outcome outcome, Selection selection) {
    return ShortFollowUp.of(outcome, selection.rows())
        .map(
            found -> {
              String months = FollowUps.plain(found.leastMonths());
              return new TooShort(
                  say("page.too-short", Map.of("series", found.words())),
                  say("page.only-followed-long", Map.of("months", months)),
                  address.with(Filters.FOLLOW_UP_FROM, months).at(path));
            });
  }
}
