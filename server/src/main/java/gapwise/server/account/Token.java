package gapwise.server.account;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * A right of a program to ask in the name of a person.
 *
 * @param id by which it is ended; the first digits of its digest
 * @param label what it is for
 * @param owner whose name it writes under
 * @param role what it may do; never more than the person may at that moment
 * @param made when it was made
 * @param ends from when on it is worth nothing
 * @param used when it was last used, within {@link Tokens#NOTED}; empty for never
 */
public record Token(
    String id,
    String label,
    String owner,
    Role role,
    Instant made,
    Instant ends,
    Optional<Instant> used) {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  /** Longest label. */
  public static final int LONGEST_LABEL = 60;

  /** Longest time until the end. */
  public static final Duration LONGEST = Duration.ofDays(365);

  public Token {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(owner, "owner");
    Objects.requireNonNull(role, "role");
    Objects.requireNonNull(used, "used");
    if (label.isBlank() || label.length() > LONGEST_LABEL) {
      throw new IllegalArgumentException("no label of a token: '" + label + "'");
    }
    if (!ends.isAfter(made) || ends.isAfter(made.plus(LONGEST))) {
      throw new IllegalArgumentException("a token ends within a year, not " + ends);
    }
  }

  Token used(Instant now) {
    return new Token(id, label, owner, role, made, ends, Optional.of(now));
  }

  String toJson() {
    ObjectNode node =
        MAPPER
            .createObjectNode()
            .put("id", id)
            .put("label", label)
            .put("owner", owner)
            .put("role", role.word())
            .put("made", made.toString())
            .put("ends", ends.toString());
    used.ifPresent(when -> node.put("used", when.toString()));
    return node.toString();
  }

  static Token ofJson(String json) {
    var node = Account.tree(json);
    return new Token(
        node.path("id").asText(),
        node.path("label").asText(),
        node.path("owner").asText(),
        Role.find(node.path("role").asText()).orElse(Role.READER),
        Instant.parse(node.path("made").asText()),
        Instant.parse(node.path("ends").asText()),
        Optional.of(node.path("used").asText())
            .filter(text -> !text.isEmpty())
            .map(Instant::parse));
  }
}
