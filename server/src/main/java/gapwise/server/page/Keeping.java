package gapwise.server.page;

import gapwise.review.kept.KeptQuestion;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.kept.KeptPlace;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * The question of a page, as it can be kept.
 *
 * @param title what it is called until somebody calls it otherwise
 * @param page path of the page
 * @param query the question alone, as it stands in an address
 * @param from id of the kept question from which the page was opened; empty where it was not
 */
public record Keeping(String title, String page, String query, Optional<String> from) {
  public Keeping {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(page, "page");
    Objects.requireNonNull(query, "query");
    Objects.requireNonNull(from, "from");
  }

  static Keeping of(String title, String page, Address address) {
    String written = KeptPlace.question(address).at("");
    return new Keeping(
        title.length() > KeptQuestion.LONGEST_TITLE
            ? title.substring(0, KeptQuestion.LONGEST_TITLE - 1) + '\u2026'
            : title,
        page,
        written.isEmpty() ? written : written.substring(1),
        Optional.of(address.first(KeptPlace.KEPT)).filter(KeptQuestion::isId));
  }

  /**
   * Whether the form stands on a page of its own: a sheet has fields of a patient, and no form of
   * its page may send what is typed there.
   */
  public boolean isApart() {
    return page.equals(PagePaths.SHEET);
  }

  /** Address of the form apart. */
  public String apart() {
    return new Address(Map.of())
        .with("page", page)
        .with("query", query)
        .with("title", title)
        .at(PagePaths.KEPT);
  }

  /** The same from the address of the form; empty where it names no page that can be kept. */
  public static Optional<Keeping> apart(Address address) {
    return KeptPlace.find(address.first("page"))
        .map(
            place ->
                new Keeping(
                    address.first("title"),
                    place.path(),
                    address.first("query"),
                    Optional.empty()));
  }

  /** Address of what moved since, to be put on the page; empty where it was not opened so. */
  public Optional<String> mark() {
    return from.map(
        id ->
            new Address(Map.of())
                .with("at", page + "?" + query)
                .at(PagePaths.KEPT + "/" + id + "/mark"));
  }

  /** Address of the kept question, or of all. */
  public String kept() {
    return from.map(id -> PagePaths.KEPT + "/" + id).orElse(PagePaths.KEPT);
  }
}
