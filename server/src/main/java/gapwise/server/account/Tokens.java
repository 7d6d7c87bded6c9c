package gapwise.server.account;

import gapwise.store.WorkingCopies;
import gapwise.store.WorkingCopy;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The tokens of programs. Of each a digest is kept, by which nobody can ask. */
public final class Tokens {
  private static final String KIND = "token";

  /** How every token begins, so that one left in a file is known for what it is. */
  static final String START = "gapwise_";

  /** Use is noted no more often than this. */
  static final Duration NOTED = Duration.ofMinutes(10);

  /** Tokens of one person at one time. */
  public static final int MOST_OF_ONE = 20;

  private static final int DIGITS_OF_ID = 12;

  private final WorkingCopies copies;
  private final Accounts accounts;
  private final Clock clock;

  Tokens(WorkingCopies copies, Accounts accounts, Clock clock) {
    this.copies = copies;
    this.accounts = accounts;
    this.clock = clock;
  }

  /**
   * Who asks by a token, and what they may.
   *
   * @param account whose token it is
   * @param role the lesser of the token's role and the person's
   */
  public record Asking(Account account, Role role) {}

  /**
   * Makes one.
   *
   * @param role not above the person's
   * @param lasting until its end, at most {@link Token#LONGEST}
   * @return the secret, which is kept nowhere
   */
  public String make(Account owner, String label, Role role, Duration lasting) {
    if (!owner.role().isAtLeast(role)) {
      throw new IllegalArgumentException("a token may not do more than its person");
    }
    String secret = START + Secret.made();
    String key = Secret.digest(secret);
    Instant now = clock.instant();
    Token token =
        new Token(
            key.substring(0, DIGITS_OF_ID),
            label,
            owner.name(),
            role,
            now,
            now.plus(lasting),
            Optional.empty());
    copies.keep(KIND, key, token.toJson(), owner.name(), 0);
    return secret;
  }

  /** Who asks by a secret; empty where it is none, has ended, or its account is closed. */
  public Optional<Asking> asking(String secret) {
    String key = Secret.digest(secret);
    Instant now = clock.instant();
    Optional<WorkingCopy> copy = copies.find(KIND, key);
    if (copy.isEmpty()) {
      return Optional.empty();
    }
    Token token = Token.ofJson(copy.get().json());
    Optional<Account> owner = accounts.find(token.owner()).filter(one -> !one.closed());
    if (owner.isEmpty() || !now.isBefore(token.ends())) {
      return Optional.empty();
    }
    if (token.used().isEmpty() || !now.isBefore(token.used().get().plus(NOTED))) {
      copies.keep(KIND, key, token.used(now).toJson(), token.owner(), copy.get().version());
    }
    Role role = owner.get().role().isAtLeast(token.role()) ? token.role() : owner.get().role();
    return Optional.of(new Asking(owner.get(), role));
  }

  /** All that are kept, by person and then the one that ends first; ended ones among them. */
  public List<Token> all() {
    List<Token> all = new ArrayList<>();
    copies.forEach(KIND, copy -> all.add(Token.ofJson(copy.json())));
    all.sort(
        Comparator.comparing((Token token) -> Account.key(token.owner()))
            .thenComparing(Token::ends));
    return List.copyOf(all);
  }

  /** Those of one person. */
  public List<Token> of(Account owner) {
    return all().stream().filter(token -> Account.key(token.owner()).equals(owner.key())).toList();
  }

  /** Ends one by its id; empty where there is none. */
  public Optional<Token> end(String id) {
    List<WorkingCopy> found = new ArrayList<>();
    copies.forEach(
        KIND,
        copy -> {
          if (Token.ofJson(copy.json()).id().equals(id)) {
            found.add(copy);
          }
        });
    found.forEach(copy -> copies.drop(KIND, copy.key()));
    return found.stream().findFirst().map(copy -> Token.ofJson(copy.json()));
  }

  /** Ends all of one person. */
  public void endAll(Account owner) {
    of(owner).forEach(token -> end(token.id()));
  }
}
