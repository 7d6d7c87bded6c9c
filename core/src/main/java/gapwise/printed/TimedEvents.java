package gapwise.printed;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** Words in a column of times that say whether the event ever happened: "no union". */
final class TimedEvents {
  private static final Pattern NOT_UNITED =
      Pattern.compile(
          "(?:no|not|never|failed|without)[ -]?(?:to )?(?:uni(?:on|ted?)|heal(?:ed|ing)?|consolidat(?:ed|ion))"
              + "|non-? ?union|did not (?:unite|heal)|failure of union");
  private static final Pattern AMPUTATED =
      Pattern.compile("(?:later |secondary )?amputat(?:ed|ion)(?: later)?");

  private TimedEvents() {}

  /** Empty where the words say something else. */
  static Optional<Proposed> of(String text, Wanted wanted) {
    String words = Printed.plain(text).toLowerCase(Locale.ROOT);
    if (wanted.base().equals("time_to_union") && NOT_UNITED.matcher(words).matches()) {
      return Optional.of(Proposed.taken("union", "no", Optional.empty()));
    }
    if (AMPUTATED.matcher(words).matches()) {
      return Optional.of(
          Proposed.asked(
              "secondary_amputation",
              "yes",
              Optional.empty(),
              Doubt.WORD,
              "Found '"
                  + text
                  + "' for "
                  + wanted.name()
                  + ". Say whether the limb was removed after reconstruction was begun."));
    }
    return Optional.empty();
  }
}
