package gapwise.server.account;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.screening.Reader;
import java.text.Normalizer;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * A person of the team. An account is never deleted, since the history names it: it is closed.
 *
 * @param name as history and pages show it; the name of one who screens
 * @param role what the person may do
 * @param hash of the password, with the parameters it was made by
 * @param generation counts up with every new password; sessions of an older one are over
 * @param given whether somebody else made the password, so that the next thing is to choose another
 * @param closed whether nobody signs in with it any more
 * @param made when it was made
 */
public record Account(
    String name,
    Role role,
    String hash,
    int generation,
    boolean given,
    boolean closed,
    Instant made) {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  public Account {
    Objects.requireNonNull(role, "role");
    Objects.requireNonNull(hash, "hash");
    Objects.requireNonNull(made, "made");
    if (!tidy(name).equals(Optional.of(name))) {
      throw new IllegalArgumentException("no name of an account: '" + name + "'");
    }
  }

  /** The name of what was typed, where it is one: letters, digits, blanks and . ' - */
  public static Optional<String> tidy(String typed) {
    return Reader.of(Normalizer.normalize(typed, Normalizer.Form.NFC)).map(Reader::name);
  }

  /** A new one, whose person chose the password. */
  public static Account begun(String name, Role role, String hash, Clock clock) {
    Instant now = clock.instant().truncatedTo(ChronoUnit.SECONDS);
    return new Account(name, role, hash, 1, false, false, now);
  }

  /** The same with a password that somebody else made. */
  public Account asGiven() {
    return new Account(name, role, hash, generation, true, closed, made);
  }

  /** One text for one person: names that differ in capitals alone are one. */
  public static String key(String name) {
    return name.toLowerCase(Locale.ROOT);
  }

  /** One text for this person. */
  public String key() {
    return key(name);
  }

  /** The same with another role. */
  public Account with(Role other) {
    return new Account(name, other, hash, generation, given, closed, made);
  }

  /**
   * The same with another password.
   *
   * @param byOther whether somebody else made it
   */
  public Account withPassword(String newHash, boolean byOther) {
    return new Account(name, role, newHash, generation + 1, byOther, closed, made);
  }

  /** The same password hashed anew, which ends no session. */
  Account rehashed(String newHash) {
    return new Account(name, role, newHash, generation, given, closed, made);
  }

  /** The same, closed. */
  public Account shut() {
    return new Account(name, role, hash, generation + 1, given, true, made);
  }

  String toJson() {
    return MAPPER
        .createObjectNode()
        .put("name", name)
        .put("role", role.word())
        .put("hash", hash)
        .put("generation", generation)
        .put("given", given)
        .put("closed", closed)
        .put("made", made.toString())
        .toString();
  }

  static Account ofJson(String json) {
    JsonNode node = tree(json);
    return new Account(
        node.path("name").asText(),
        Role.find(node.path("role").asText()).orElse(Role.READER),
        node.path("hash").asText(),
        node.path("generation").asInt(),
        node.path("given").asBoolean(),
        node.path("closed").asBoolean(true),
        Instant.parse(node.path("made").asText()));
  }

  /** What was kept here and by nobody else. */
  static JsonNode tree(String json) {
    try {
      return MAPPER.readTree(json);
    } catch (JsonProcessingException unreadable) {
      throw new IllegalStateException("what is kept of accounts cannot be read", unreadable);
    }
  }
}
