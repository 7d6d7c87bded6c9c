package gapwise.server.account;

import gapwise.server.account.Deeds.Kind;
import java.time.Duration;
import java.util.Optional;

/** Signing in by name and password. */
public final class SignIn {
  private final People people;
  private final Passwords passwords;
  private final Throttle throttle;

  public SignIn(People people, Passwords passwords) {
    this.people = people;
    this.passwords = passwords;
    this.throttle = new Throttle(people.clock());
  }

  /** What came of it. */
  public sealed interface Outcome {
    /**
     * Somebody is known.
     *
     * @param secret of the session
     */
    record Welcome(Account account, String secret) implements Outcome {}

    /** The name or the password is wrong, or the account closed; which is not told. */
    record Wrong() implements Outcome {}

    /** It was tried too often; nothing was looked at. */
    record Wait(Duration left) implements Outcome {}
  }

  /**
   * Tries it.
   *
   * @param peer the address it comes from, whole
   * @param shortPeer the same as the trail keeps it
   */
  public Outcome attempt(String typed, String password, String peer, String shortPeer) {
    String name = Account.tidy(typed).orElse("");
    String key = Account.key(name);
    Optional<Duration> wait = throttle.attempt(key, peer);
    if (wait.isPresent()) {
      return new Outcome.Wait(wait.get());
    }
    Optional<Account> account = people.accounts().find(name).filter(one -> !one.closed());
    boolean right = passwords.isRight(password, account);
    // Another name than one that exists may be a password in the wrong field, and is not kept.
    Deeds deeds = new Deeds(people.trail(), account.map(Account::name).orElse(""), shortPeer);
    if (!right) {
      deeds.add(Kind.SIGN_IN_REFUSED, "", account.isPresent() ? "wrong password" : "no such name");
      return new Outcome.Wrong();
    }
    throttle.succeeded(key, peer);
    Account known = renewed(account.orElseThrow(), password);
    String secret = people.sessions().begin(known);
    deeds.add(Kind.SIGN_IN, "", known.role().word());
    return new Outcome.Welcome(known, secret);
  }

  /** Whether this is the password of somebody who has signed in; tried no more often than that. */
  public boolean isOwn(Account account, String password, String peer) {
    if (throttle.attempt(account.key(), peer).isPresent()) {
      return false;
    }
    boolean right = passwords.isRight(password, Optional.of(account));
    if (right) {
      throttle.succeeded(account.key(), peer);
    }
    return right;
  }

  private Account renewed(Account account, String password) {
    if (!Passwords.isOlder(account.hash())) {
      return account;
    }
    String hash = passwords.hash(password);
    return people
        .accounts()
        .change(
            account.name(),
            now -> now.hash().equals(account.hash()) ? now.rehashed(hash) : now,
            account.name())
        .orElse(account);
  }
}
