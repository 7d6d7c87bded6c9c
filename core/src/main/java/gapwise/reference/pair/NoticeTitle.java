package gapwise.reference.pair;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A title without what says that it is a notice, or that its paper was retracted. Words that are
 * also words of surgery, such as "correction of" and "retraction of", are no notice by themselves.
 *
 * @param notice which notice the title says it is
 * @param retracted whether it says that its own paper was retracted
 * @param core the rest of the title; the whole of it where nothing was said
 */
record NoticeTitle(Optional<Nature> notice, boolean retracted, String core) {
  private static final String QUOTE = "[\\s\"'\u2018\u2019\u201c\u201d\u00ab\u00bb\\[(]*";

  private static final Pattern RETRACTED =
      Pattern.compile(
          "^[\\s\\[(*]*(?:retracted(?:\\s+(?:article|paper|publication|chapter))?|withdrawn(?:\\s+article)?|removed)\\s*[\\])*]*\\s*(?:[:.\\u2013\\u2014-]+\\s*|(?<=[\\])])\\s*)",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern RETRACTED_BEHIND =
      Pattern.compile(
          "\\s*[\\[(]\\s*retracted(?:\\s+(?:article|paper|in:?)[^\\])]*)?\\.?[^\\])]*[\\])]\\s*$",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern RETRACTION =
      start(
          "(?:retraction|withdrawal)\\s+(?:notice|note|statement)\\s*(?:(?:to|of|for|on)\\b)?\\s*[:.\\u2013\\u2014-]?|(?:notice|statement)"
              + " of (?:retraction|withdrawal)\\s*[:.\\u2013\\u2014-]?|retraction(?:\\s+(?:to|of|for))?\\s*[:\\u2014]|retraction\\s+(?:to|of)\\s+(?=[\"'\u2018\u201c])");

  private static final Pattern CORRECTION =
      start(
          "(?:author|publisher|editorial)?\\s*(?:correction|errat(?:um|a)|corrigend(?:um|a)|addendum)(?:\\s+(?:notice|note))?(?:\\s+(?:to|for|in|of))?\\s*[:\\u2014]|(?:errat(?:um|a)|corrigend(?:um|a))\\s+(?:to|for|in)\\b|correction\\s+(?:to|for)\\s+(?=[\"'\u2018\u201c])|correction"
              + " notice\\s+(?:to|for)\\b");

  private static final Pattern CONCERN =
      start(
          "(?:editorial\\s+)?expression of"
              + " concern\\s*(?:(?:to|for|on|regarding)\\b)?\\s*[:.\\u2013\\u2014-]?");

  private static final Pattern COMMENT =
      start(
          "(?:invited\\s+)?(?:comments?|commentary|letter to the"
              + " editor|letter|response|repl(?:y|ies)|author'?s'? (?:repl(?:y|ies)|response)|in"
              + " repl(?:y|ies)|discussion|critique|re)(?:\\s+(?:on|to|re|of|about|regarding|concerning))?(?:\\s+the"
              + " article)?\\s*[:\\u2014]|(?:comments?|commentary) on\\b|(?:reply|response) to"
              + " [^:]{1,60}:|(?:letter to the editor|letter|response|reply)"
              + "\\s+(?:on|to|regarding|concerning|re)\\b(?=.{0,4}[\"'\u2018\u201c])");

  private static Pattern start(String words) {
    return Pattern.compile("^[\\s\\[(]*(?:" + words + ")", Pattern.CASE_INSENSITIVE);
  }

  static NoticeTitle of(String title) {
    Optional<NoticeTitle> notice =
        as(Nature.RETRACTION, RETRACTION, title)
            .or(() -> as(Nature.CONCERN, CONCERN, title))
            .or(() -> as(Nature.CORRECTION, CORRECTION, title))
            .or(() -> as(Nature.COMMENT, COMMENT, title));
    if (notice.isPresent()) {
      return notice.get();
    }
    Matcher before = RETRACTED.matcher(title);
    if (before.find() && before.end() < title.length()) {
      return new NoticeTitle(Optional.empty(), true, title.substring(before.end()));
    }
    Matcher behind = RETRACTED_BEHIND.matcher(title);
    if (behind.find() && behind.start() > 0) {
      return new NoticeTitle(Optional.empty(), true, title.substring(0, behind.start()));
    }
    return new NoticeTitle(Optional.empty(), false, title);
  }

  private static Optional<NoticeTitle> as(Nature nature, Pattern start, String title) {
    Matcher found = start.matcher(title);
    if (!found.find()) {
      return Optional.empty();
    }
    String rest = title.substring(found.end()).replaceFirst("^" + QUOTE, "");
    rest = rest.replaceFirst("[\\s\"'\u2019\u201d\u00bb\\]]+$", "");
    return Optional.of(new NoticeTitle(Optional.of(nature), false, rest));
  }
}
