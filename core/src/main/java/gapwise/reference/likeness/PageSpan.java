package gapwise.reference.likeness;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * First and last page, in full.
 *
 * @param first first page, or the number of an article, small letters; never empty
 * @param last last page; the first one where only one is told
 */
public record PageSpan(String first, String last) {
  private static final Pattern SPAN =
      Pattern.compile(
          "([\\p{L}]{0,4}\\.?\\s?\\d+[\\p{L}]?)(?:\\s*[-\\u2010-\\u2015\\u2212]+\\s*([\\p{L}]{0,4}\\.?\\d+[\\p{L}]?))?.*",
          Pattern.DOTALL);

  private static final Pattern NUMBER = Pattern.compile("(\\D*)(\\d+)(\\D*)");

  /** Reads pages such as 123-8, 123–128, S12-S19, e1024 or 7; empty for text without a number. */
  public static Optional<PageSpan> of(String printed) {
    String text = printed.strip().replaceFirst("^(?i)(pages?|pp?\\.?)\\s*(?=\\d)", "");
    Matcher span = SPAN.matcher(text);
    if (!span.matches()) {
      return Optional.empty();
    }
    String first = plain(span.group(1));
    String last = span.group(2) == null ? first : full(first, plain(span.group(2)));
    return Optional.of(new PageSpan(first, last));
  }

  /** As "123-128". */
  public String text() {
    return first.equals(last) ? first : first + "-" + last;
  }

  private static String plain(String page) {
    return page.replaceAll("[\\s.]", "").toLowerCase(Locale.ROOT);
  }

  /** "123-8" is 123 to 128: the digits left out are those of the first page. */
  private static String full(String first, String last) {
    Matcher one = NUMBER.matcher(first);
    Matcher two = NUMBER.matcher(last);
    if (!one.matches() || !two.matches()) {
      return last;
    }
    String from = one.group(2);
    String to = two.group(2);
    boolean shortened =
        to.length() < from.length()
            && (two.group(1).isEmpty() || two.group(1).equals(one.group(1)));
    if (!shortened) {
      return last;
    }
    String whole = from.substring(0, from.length() - to.length()) + to;
    return whole.compareTo(from) < 0 ? last : one.group(1) + whole + two.group(3);
  }
}
