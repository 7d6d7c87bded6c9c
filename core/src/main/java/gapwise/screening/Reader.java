package gapwise.screening;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Who screens, by initials or a short name. Names that differ in capitals or blanks alone are one
 * person, so that nobody is taken for two.
 *
 * @param name as it was typed, without blanks at its ends
 */
public record Reader(String name) {
  /** Longest name; a name of more is a mistake of typing. */
  public static final int LONGEST = 40;

  private static final Pattern FORM = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N} .'-]*");

  public Reader {
    if (!isName(name)) {
      throw new IllegalArgumentException("no name of a reader: '" + name + "'");
    }
  }

  /** The reader of what was typed, where it is a name. */
  public static Optional<Reader> of(String typed) {
    String name = typed.strip().replaceAll("\\s+", " ");
    return isName(name) ? Optional.of(new Reader(name)) : Optional.empty();
  }

  private static boolean isName(String name) {
    return name.length() <= LONGEST && FORM.matcher(name).matches() && name.equals(name.strip());
  }

  /** One text for one person. */
  public String key() {
    return name.toLowerCase(Locale.ROOT);
  }
}
