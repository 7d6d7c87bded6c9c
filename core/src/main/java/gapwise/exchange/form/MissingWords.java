package gapwise.exchange.form;

import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Missing;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The words by which a cell says why it holds no value; never read as 0. */
public final class MissingWords {
  private static final Map<String, Missing> WORDS =
      Map.ofEntries(
          Map.entry("-", Missing.NOT_REPORTED),
          Map.entry("–", Missing.NOT_REPORTED),
          Map.entry("—", Missing.NOT_REPORTED),
          Map.entry("nr", Missing.NOT_REPORTED),
          Map.entry("n.r.", Missing.NOT_REPORTED),
          Map.entry("n/r", Missing.NOT_REPORTED),
          Map.entry("not reported", Missing.NOT_REPORTED),
          Map.entry("not-reported", Missing.NOT_REPORTED),
          Map.entry("n/a", Missing.NOT_APPLICABLE),
          Map.entry("n.a.", Missing.NOT_APPLICABLE),
          Map.entry("not applicable", Missing.NOT_APPLICABLE),
          Map.entry("not-applicable", Missing.NOT_APPLICABLE),
          Map.entry("?", Missing.UNCLEAR),
          Map.entry("unclear", Missing.UNCLEAR));

  private MissingWords() {}

  public static Optional<Missing> read(String text) {
    return text.length() > 20
        ? Optional.empty()
        : Optional.ofNullable(WORDS.get(text.toLowerCase(Locale.ROOT)));
  }

  /** The reason in words; a question mark where "unclear" is itself an answer of the column. */
  public static String write(Missing reason, CellForm<?> form) {
    return reason == Missing.UNCLEAR && form.allowed().contains("unclear")
        ? "?"
        : Coded.codeOf(reason).replace('-', ' ');
  }
}
