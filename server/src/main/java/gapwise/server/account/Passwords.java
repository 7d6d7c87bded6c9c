package gapwise.server.account;

import static gapwise.sentence.Sentences.say;

import com.password4j.Argon2Function;
import com.password4j.BadParametersException;
import com.password4j.Password;
import com.password4j.types.Argon2;
import java.text.Normalizer;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/**
 * Passwords, kept as Argon2id (RFC 9106). Each hash carries the parameters it was made by, so that
 * older ones are still checked, and made anew when their person signs in.
 */
public final class Passwords {
  /**
   * Letters at least. NIST SP 800-63B (revision 3, 5.1.1.1) asks for at least 8 and no rules of
   * composition; 12 is ours.
   */
  public static final int SHORTEST = 12;

  /** Letters at most; the same paper asks that 64 be taken, and some bound must be. */
  public static final int LONGEST = 128;

  /**
   * The least that the OWASP Password Storage Cheat Sheet names for Argon2id: 19 MiB, 2 passes, 1
   * lane.
   */
  static final int MEMORY_KIBIBYTES = 19 * 1024;

  static final int PASSES = 2;
  private static final int LANES = 1;
  private static final int BYTES = 32;
  private static final int SALT_BYTES = 16;

  /** Hashes worked out at one time, so that their memory stays below 80 MiB. */
  private static final int AT_ONCE = 4;

  private static final Duration PATIENCE = Duration.ofSeconds(10);

  private final Argon2Function function =
      Argon2Function.getInstance(MEMORY_KIBIBYTES, PASSES, LANES, BYTES, Argon2.ID);
  private final Semaphore hashing = new Semaphore(AT_ONCE, true);

  /** A hash to check against where there is no account, so that this takes as long. */
  private final String ofNobody = hash(Secret.made());

  /** Thrown where too many sign in at this moment. */
  public static final class BusyException extends RuntimeException {
    private static final long serialVersionUID = 1;
  }

  /** One for somebody else, to be typed once. */
  public static String made() {
    return Secret.typed();
  }

  /** Why a password cannot be taken, in a sentence; empty where it can. */
  public static Optional<String> wrong(String password, String name) {
    String normal = normal(password);
    int letters = normal.codePointCount(0, normal.length());
    if (letters < SHORTEST || letters > LONGEST) {
      return Optional.of(say("people.length", Map.of("least", SHORTEST, "most", LONGEST)));
    }
    if (normal.codePoints().distinct().count() < SHORTEST / 2) {
      return Optional.of(say("people.few-letters", Map.of("least", SHORTEST / 2)));
    }
    return Account.key(normal).contains(Account.key(name))
        ? Optional.of(say("people.holds-name"))
        : Optional.empty();
  }

  /** What is kept of a password. */
  public String hash(String password) {
    return apart(
        () -> Password.hash(normal(password)).addRandomSalt(SALT_BYTES).with(function).getResult());
  }

  /** Whether a password is the one of an account; of none it never is, and takes as long. */
  boolean isRight(String password, Optional<Account> account) {
    String hash = account.map(Account::hash).orElse(ofNobody);
    String tried = normal(password);
    boolean tooLong = tried.length() > 2 * LONGEST;
    boolean equal = apart(() -> matches(tooLong ? "" : tried, hash));
    return equal && account.isPresent() && !tooLong;
  }

  private static boolean matches(String password, String hash) {
    try {
      return Password.check(password, hash).with(Argon2Function.getInstanceFromHash(hash));
    } catch (BadParametersException unreadable) {
      throw new IllegalStateException("the hash of a password cannot be read", unreadable);
    }
  }

  /** Whether a hash was made by less than what is asked for now. */
  static boolean isOlder(String hash) {
    Argon2Function made = Argon2Function.getInstanceFromHash(hash);
    return made.getVariant() != Argon2.ID
        || made.getMemory() < MEMORY_KIBIBYTES
        || made.getIterations() < PASSES;
  }

  /** One text for what looks alike; SP 800-63B asks for this before hashing. */
  private static String normal(String password) {
    return Normalizer.normalize(password, Normalizer.Form.NFKC);
  }

  private interface Hashing<T> {
    T work();
  }

  private <T> T apart(Hashing<T> hashed) {
    try {
      if (!hashing.tryAcquire(PATIENCE.toMillis(), TimeUnit.MILLISECONDS)) {
        throw new BusyException();
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new BusyException();
    }
    try {
      return hashed.work();
    } finally {
      hashing.release();
    }
  }
}
