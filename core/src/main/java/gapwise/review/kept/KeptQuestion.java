package gapwise.review.kept;

import java.util.Objects;
import java.util.regex.Pattern;

/**
 * A question that a team keeps.
 *
 * @param id twelve hexadecimal digits
 * @param title what people call it
 * @param page path of the page that answers it, such as "/pooled"
 * @param query what stands behind the question mark of its address; may be empty
 * @param digest what the answer was
 */
public record KeptQuestion(String id, String title, String page, String query, Digest digest) {
  /** Longest title, in letters. */
  public static final int LONGEST_TITLE = 200;

  /** Longest query, in letters: what a browser and a server take of an address. */
  public static final int LONGEST_QUERY = 4000;

  private static final Pattern ID = Pattern.compile("[0-9a-f]{12}");

  public KeptQuestion {
    Objects.requireNonNull(digest, "digest");
    if (!isId(id)) {
      throw new IllegalArgumentException("no id of a kept question: '" + id + "'");
    }
    if (title.isBlank() || title.length() > LONGEST_TITLE) {
      throw new IllegalArgumentException("a title has 1 to " + LONGEST_TITLE + " letters");
    }
    if (!page.startsWith("/") || query.length() > LONGEST_QUERY) {
      throw new IllegalArgumentException("no address of a page: '" + page + "'");
    }
  }

  /** Whether a text has the form of an id. */
  public static boolean isId(String text) {
    return ID.matcher(text).matches();
  }

  /** The address. */
  public String address() {
    return query.isEmpty() ? page : page + "?" + query;
  }

  /** The same with another answer. */
  public KeptQuestion with(Digest other) {
    return new KeptQuestion(id, title, page, query, other);
  }
}
