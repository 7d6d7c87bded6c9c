package gapwise.server.account;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.password4j.Argon2Function;
import com.password4j.Hash;
import com.password4j.types.Argon2;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.HexFormat;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Passwords and their hashes. */
class PasswordsTest {
  private static final String GOOD = "seven quiet herons wade";
  private final Passwords passwords = new Passwords();

  private static Account with(String hash) {
    return Account.begun("Ann", Role.READER, hash, Clock.systemUTC());
  }

  /**
   * Argon2id version 19 of "password" with the salt "somesalt": from the tests of the reference
   * implementation (github.com/P-H-C/phc-winner-argon2, src/test.c). The vector of RFC 9106 (5.3)
   * has a secret and associated data, which this library does not take.
   */
  @ParameterizedTest
  @CsvSource({
    "65536, 2, 1, 09316115d5cf24ed5a15a31a3ba326e5cf32edc24702987c02b6566f61913cf7",
    "256, 2, 1, 9dfeb910e80bad0311fee20f9c0e2b12c17987b4cac90c2ef54d5b3021c68bfe"
  })
  void theHashIsTheOneThatOtherProgramsWorkOut(int memory, int passes, int lanes, String expected) {
    Argon2Function function =
        Argon2Function.getInstance(memory, passes, lanes, 32, Argon2.ID, 0x13);
    Hash hash =
        function.hash(
            "password".getBytes(StandardCharsets.UTF_8),
            "somesalt".getBytes(StandardCharsets.UTF_8));
    assertEquals(expected, HexFormat.of().formatHex(hash.getBytes()));
  }

  @Test
  void aHashNamesItsParametersAndIsNeverTheSameTwice() {
    String hash = passwords.hash(GOOD);
    assertTrue(hash.startsWith("$argon2id$v=19$m=19456,t=2,p=1$"), hash);
    assertNotEquals(hash, passwords.hash(GOOD));
    assertFalse(hash.contains(GOOD));
    assertTrue(passwords.isRight(GOOD, Optional.of(with(hash))));
    assertFalse(passwords.isRight(GOOD + " ", Optional.of(with(hash))));
    assertFalse(passwords.isRight("", Optional.of(with(hash))));
    assertFalse(passwords.isRight(GOOD, Optional.empty()));
    assertFalse(passwords.isRight("x".repeat(100_000), Optional.of(with(hash))));
  }

  @Test
  void aHashOfLessIsStillCheckedAndKnownToBeOlder() {
    Argon2Function less = Argon2Function.getInstance(8 * 1024, 1, 1, 32, Argon2.ID);
    String old = com.password4j.Password.hash(GOOD).addRandomSalt(16).with(less).getResult();
    assertTrue(passwords.isRight(GOOD, Optional.of(with(old))));
    assertTrue(Passwords.isOlder(old));
    assertFalse(Passwords.isOlder(passwords.hash(GOOD)));
  }

  /** U+212B and U+00C5 are one letter by NFKC (Unicode Standard Annex 15). */
  @Test
  void whatLooksAlikeIsOnePassword() {
    String hash = passwords.hash("\u212Bngstrom quiet herons");
    assertTrue(passwords.isRight("\u00C5ngstrom quiet herons", Optional.of(with(hash))));
  }

  @ParameterizedTest
  @CsvSource({
    "elevenlette, false",
    "twelveletter, true",
    "seven quiet herons wade, true",
    "aaaaaaaaaaaaaaaaaaaa, false",
    "my name is ANN herons, false",
    "пароль из слов, true"
  })
  void lengthAndNotKindsOfSignsMakesAPassword(String password, boolean taken) {
    assertEquals(taken, Passwords.wrong(password, "ann").isEmpty(), password);
    assertTrue(Passwords.wrong("x1y2z3".repeat(22), "ann").isPresent(), "132 letters");
    assertTrue(Passwords.wrong("x1y2z3".repeat(21), "ann").isEmpty(), "126 letters");
  }

  @Test
  void onesThatAreMadeForOthersAreLongAndDifferent() {
    assertTrue(Passwords.made().matches("([a-z2-9]{5}-){3}[a-z2-9]{5}"));
    assertNotEquals(Passwords.made(), Passwords.made());
    assertEquals(Optional.empty(), Passwords.wrong(Passwords.made(), "Ann"));
  }
}
