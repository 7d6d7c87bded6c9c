package gapwise.server.account;

import com.fasterxml.jackson.databind.json.JsonMapper;
import java.time.Duration;
import java.time.Instant;
import java.util.Objects;

/**
 * Somebody who has signed in with a browser.
 *
 * @param account whose, by the key of the account
 * @param generation of the password that it was begun with
 * @param begun when it was begun
 * @param seen when it was last used, within {@link Sessions#NOTED}
 */
record Session(String account, int generation, Instant begun, Instant seen) {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  /**
   * Ends when it was not used for so long: NIST SP 800-63B (revision 3, 4.2.3) asks for signing in
   * again every 12 hours at its middle level.
   */
  static final Duration IDLE = Duration.ofHours(12);

  /** Ends even where it is used; the lowest level of that paper would allow 30 days. Ours. */
  static final Duration LONGEST = Duration.ofDays(7);

  Session {
    Objects.requireNonNull(account, "account");
    Objects.requireNonNull(begun, "begun");
    Objects.requireNonNull(seen, "seen");
  }

  boolean isOver(Instant now) {
    return !now.isBefore(seen.plus(IDLE)) || !now.isBefore(begun.plus(LONGEST));
  }

  Session seen(Instant now) {
    return new Session(account, generation, begun, now);
  }

  String toJson() {
    return MAPPER
        .createObjectNode()
        .put("account", account)
        .put("generation", generation)
        .put("begun", begun.toString())
        .put("seen", seen.toString())
        .toString();
  }

  static Session ofJson(String json) {
    var node = Account.tree(json);
    return new Session(
        node.path("account").asText(),
        node.path("generation").asInt(),
        Instant.parse(node.path("begun").asText()),
        Instant.parse(node.path("seen").asText()));
  }
}
