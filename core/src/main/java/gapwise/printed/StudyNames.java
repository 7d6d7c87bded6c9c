package gapwise.printed;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Author and year out of the short name of a study: "Author 2008", "Author et al., 2008". */
public final class StudyNames {
  private static final Pattern NAME =
      Pattern.compile(
          "((?:(?:[Vv]an|[Vv]on|de|der|den|da|di|del|la|le|ten|ter) )*\\p{Lu}[\\p{L}'’-]+(?: \\p{Lu}[\\p{L}'’-]*\\p{Ll}[\\p{L}'’-]*)*)(?:,? \\p{Lu}{1,3}\\b\\.?)?(?:,? (?:et al\\.?|and (?:others|colleagues|co-?workers)|& [\\p{L}]+|and \\p{Lu}[\\p{L}]+|u\\. a\\.))?[,.]? ?[(\\[]?((?:19|20)\\d{2})([a-z]?)[)\\]]?");

  /** Longer texts are no names. */
  private static final int LONGEST = 100;

  private StudyNames() {}

  /** Whether a text is a name with a year and nothing besides. */
  public static boolean is(String text) {
    return text.length() <= LONGEST && NAME.matcher(bare(text)).matches();
  }

  /** The name without the number of a list or citation. */
  private static String bare(String text) {
    return Printed.plain(text)
        .replaceFirst("^\\d{1,3}[.)] +", "")
        .replaceFirst(" *[\\[(]\\d{1,3}[\\])]$", "");
  }

  /** Author and year alone, by which the same study is known in another table. */
  public static Optional<String> shortName(String text) {
    Matcher name = NAME.matcher(text.length() > LONGEST ? "" : bare(text));
    return name.matches()
        ? Optional.of(name.group(1) + " " + name.group(2) + name.group(3))
        : Optional.empty();
  }

  /** First author and year; the author alone where no year stands, if it is one word or few. */
  static List<Proposed> of(String text) {
    String plain = bare(text);
    Matcher name = NAME.matcher(plain.length() > LONGEST ? "" : plain);
    List<Proposed> proposals = new ArrayList<>();
    if (name.matches()) {
      proposals.add(Proposed.taken("first_author", name.group(1), Optional.empty()));
      proposals.add(Proposed.taken("year", name.group(2), Optional.empty()));
    } else {
      String author =
          plain.replaceFirst(",? (?:et al\\.?|and (?:others|colleagues|co-?workers)).*$", "");
      proposals.add(
          author.matches("\\p{Lu}[\\p{L}'’ -]{1,40}")
              ? Proposed.taken("first_author", author, Optional.empty())
              : Proposed.asked(
                  "first_author",
                  "",
                  Optional.empty(),
                  Doubt.WORD,
                  "Found '" + text + "' as the name of a study. Write its first author and year."));
    }
    return proposals;
  }
}
