package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.selection.LeftOut;
import gapwise.selection.Selection;
import gapwise.selection.UnstatedClock;
import gapwise.server.address.Address;
import gapwise.server.address.QuestionAddress;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Groups that do not say from when they count, and the address that takes them off, or in.
 *
 * @param sentence how many they are, and what was done with them
 * @param link what the address does
 * @param href the address
 */
public record UnstatedClocks(String sentence, String link, String href) {

  /** Those of a selection; empty where every group says, or where it does not matter. */
  public static Optional<UnstatedClocks> of(String path, Address address, Selection selection) {
    int taken = selection.rowsWithoutClock();
    boolean othersSay = taken < selection.rows().size();
    if (taken > 0 && othersSay) {
      return Optional.of(
          new UnstatedClocks(
              say(
                  "page.clock-silent-taken",
                  Map.of("silent", taken, "groups", selection.rows().size())),
              say("page.take-silent-off"),
              with(address, UnstatedClock.LEAVE_OUT, path)));
    }
    long leftOut =
        selection.leftOut().stream().map(LeftOut::code).filter("clock-not-stated"::equals).count();
    return leftOut == 0
        ? Optional.empty()
        : Optional.of(
            new UnstatedClocks(
                say("page.clock-silent-left-out", Map.of("silent", leftOut)),
                say("page.take-silent-in"),
                with(address, UnstatedClock.KEEP, path)));
  }

  private static String with(Address address, UnstatedClock rule, String path) {
    return address.with(QuestionAddress.UNSTATED_CLOCK, rule.code()).at(path);
  }

  /** That an address takes them off, with the same address without it. */
  public static Optional<FilterForm.On> taken(String path, Address address) {
    return Optional.of(address.first(QuestionAddress.UNSTATED_CLOCK))
        .filter(UnstatedClock.LEAVE_OUT.code()::equals)
        .map(
            rule ->
                new FilterForm.On(
                    say("page.clock-stated"),
                    path,
                    address.without(List.of(QuestionAddress.UNSTATED_CLOCK))));
  }
}
