package gapwise.printed;

import gapwise.evidence.vocabulary.Missing;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The door of this room: reads the text of one cell or phrase. */
public final class Printed {
  private static final Map<String, Missing> NOTHING =
      Map.ofEntries(
          Map.entry("", Missing.NOT_REPORTED),
          Map.entry("-", Missing.NOT_REPORTED),
          Map.entry("--", Missing.NOT_REPORTED),
          Map.entry("---", Missing.NOT_REPORTED),
          Map.entry(".", Missing.NOT_REPORTED),
          Map.entry("...", Missing.NOT_REPORTED),
          Map.entry("…", Missing.NOT_REPORTED),
          Map.entry("nr", Missing.NOT_REPORTED),
          Map.entry("n.r.", Missing.NOT_REPORTED),
          Map.entry("n/r", Missing.NOT_REPORTED),
          Map.entry("ns", Missing.NOT_REPORTED),
          Map.entry("nd", Missing.NOT_REPORTED),
          Map.entry("n.d.", Missing.NOT_REPORTED),
          Map.entry("not reported", Missing.NOT_REPORTED),
          Map.entry("not stated", Missing.NOT_REPORTED),
          Map.entry("not given", Missing.NOT_REPORTED),
          Map.entry("no data", Missing.NOT_REPORTED),
          Map.entry("missing", Missing.NOT_REPORTED),
          Map.entry("unknown", Missing.NOT_REPORTED),
          Map.entry("na", Missing.NOT_APPLICABLE),
          Map.entry("n/a", Missing.NOT_APPLICABLE),
          Map.entry("n.a.", Missing.NOT_APPLICABLE),
          Map.entry("#n/a", Missing.NOT_APPLICABLE),
          Map.entry("not applicable", Missing.NOT_APPLICABLE),
          Map.entry("does not apply", Missing.NOT_APPLICABLE),
          Map.entry("?", Missing.UNCLEAR),
          Map.entry("??", Missing.UNCLEAR),
          Map.entry("unclear", Missing.UNCLEAR));

  private static final Map<String, Boolean> ANSWERS =
      Map.ofEntries(
          Map.entry("yes", true),
          Map.entry("y", true),
          Map.entry("true", true),
          Map.entry("+", true),
          Map.entry("(+)", true),
          Map.entry("✓", true),
          Map.entry("✔", true),
          Map.entry("present", true),
          Map.entry("positive", true),
          Map.entry("ja", true),
          Map.entry("oui", true),
          Map.entry("no", false),
          Map.entry("false", false),
          Map.entry("(-)", false),
          Map.entry("✗", false),
          Map.entry("absent", false),
          Map.entry("negative", false),
          Map.entry("none", false),
          Map.entry("nein", false),
          Map.entry("non", false));

  /** A text longer than this is a paragraph, and no value. */
  private static final int LONGEST = 400;

  private Printed() {}

  /**
   * Reads a text. Any text has an answer: what is not understood is {@link PrintedValue.Words}.
   *
   * @param text as printed, footnote marks glued to it or not
   */
  public static PrintedValue read(String text) {
    if (text.length() > LONGEST) {
      return new PrintedValue.Words(text);
    }
    PlainText plain = PlainText.of(text);
    String folded = plain.folded();
    Missing missing = NOTHING.get(folded);
    if (missing != null) {
      return new PrintedValue.Nothing(missing);
    }
    if (DittoMarks.is(folded)) {
      return new PrintedValue.Ditto();
    }
    Boolean answer = ANSWERS.get(folded);
    if (answer != null) {
      return new PrintedValue.Answer(answer ? YesOrNo.YES : YesOrNo.NO);
    }
    Optional<PrintedValue> date = Dates.read(plain.text());
    return date.or(() -> Phrase.read(plain.text()))
        .orElseGet(() -> new PrintedValue.Words(plain.text()));
  }

  /** The marks of footnotes that were glued to a text; empty for most. */
  public static String marks(String text) {
    return text.length() > LONGEST ? "" : PlainText.of(text).marks();
  }

  /** The text without marks, with plain spaces and dashes. */
  public static String plain(String text) {
    return text.length() > LONGEST ? text : PlainText.of(text).text();
  }

  /** Marks that repeat the cell above. */
  private static final class DittoMarks {
    static boolean is(String folded) {
      return switch (folded.toLowerCase(Locale.ROOT)) {
        case "\"",
            "\"\"",
            "''",
            "”",
            "“",
            "″",
            "〃",
            "ditto",
            "do.",
            "idem",
            "id.",
            "same",
            "as above",
            "same as above",
            "dito",
            "s.o.",
            "see above",
            "\" \"",
            ",,",
            "-\"-",
            "- \" -" ->
            true;
        default -> false;
      };
    }
  }
}
