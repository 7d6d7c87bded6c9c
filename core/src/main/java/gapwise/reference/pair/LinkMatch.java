package gapwise.reference.pair;

import gapwise.reference.Link;
import gapwise.reference.likeness.JournalLikeness;
import gapwise.reference.likeness.JournalName;
import gapwise.reference.likeness.PageSpan;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Whether the paper that a record links to is another record. */
final class LinkMatch {
  /** "Journal. 2009 Aug;41(6):1509-1520." */
  private static final Pattern CITED =
      Pattern.compile(
          "^(.*?)[.,]?\\s+((?:1[5-9]|20)\\d\\d)\\b[^;]*;\\s*([\\w"
              + " ]*?)(?:\\s*\\(([^)]*)\\))?\\s*:\\s*([\\w\\u2013-]+)");

  private LinkMatch() {}

  /** The first link of one record that is to the other. */
  static Optional<Link> between(Profile from, Profile to) {
    return from.links().stream().filter(link -> isTo(link, to)).findFirst();
  }

  static boolean isTo(Link link, Profile paper) {
    if (link.doi().isPresent() && paper.doi().isPresent()) {
      return link.doi().equals(paper.doi());
    }
    if (link.pmid().isPresent() && paper.pmid().isPresent()) {
      return link.pmid().equals(paper.pmid());
    }
    return isCited(link.text(), paper);
  }

  /** Journal, volume and first page agree. */
  private static boolean isCited(String text, Profile paper) {
    Matcher cited = CITED.matcher(text);
    if (!cited.find() || paper.pages().isEmpty() || paper.volume().isEmpty()) {
      return false;
    }
    Optional<PageSpan> pages = PageSpan.of(cited.group(5));
    boolean place =
        pages.map(PageSpan::first).equals(paper.pages().map(PageSpan::first))
            && cited.group(3).strip().equalsIgnoreCase(paper.volume().get());
    return place
        && paper.journals().stream()
            .anyMatch(
                name ->
                    JournalLikeness.of(name, JournalName.of(cited.group(1)))
                        == JournalLikeness.SAME);
  }

  /** Keys of volume and first page of what is cited, to find it among many. */
  static Optional<String> placeKey(String text) {
    Matcher cited = CITED.matcher(text);
    return cited.find()
        ? PageSpan.of(cited.group(5))
            .map(
                span ->
                    cited.group(3).strip().toLowerCase(java.util.Locale.ROOT) + "|" + span.first())
        : Optional.empty();
  }
}
