package gapwise.evidence;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Digital object identifiers as people copy them. */
public final class Doi {
  private static final Pattern WITH_MORE =
      Pattern.compile(
          "(?:(?:https?://)?(?:www\\.)?(?:dx\\.)?doi\\.org/+|doi\\s*[:=]?\\s*)+(10\\..+)",
          Pattern.CASE_INSENSITIVE | Pattern.DOTALL);

  private Doi() {}

  /**
   * The identifier without the address of a resolver or the word DOI before it, which are no part
   * of it ({@code https://doi.org/10.1000/182}, {@code doi: 10.1000/182}); any other text as it is.
   */
  public static String bare(String text) {
    Matcher form = WITH_MORE.matcher(text.strip());
    return form.matches() ? form.group(1) : text;
  }
}
