package gapwise.server.account;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sessions and tokens end when they say, whatever is done with them. */
class SessionsTest {
  @TempDir Path home;
  private final SetClock clock = new SetClock();
  private DocumentStore store;
  private People people;
  private Account ann;

  @BeforeEach
  void open() {
    store = DocumentStore.open(home, clock);
    people = People.of(store.workingCopies(), store.trail(), clock);
    ann = Account.begun("Ann", Role.EXTRACTOR, "none", clock);
    assertTrue(people.accounts().add(ann, "test"));
  }

  @AfterEach
  void close() {
    store.close();
  }

  private Optional<String> whose(String secret) {
    return people.sessions().account(secret).map(Account::name);
  }

  @Test
  void aSessionEndsTwelveHoursAfterItsLastUse() {
    String secret = people.sessions().begin(ann);
    clock.pass(Duration.ofHours(11));
    assertEquals(Optional.of("Ann"), whose(secret));
    clock.pass(Duration.ofHours(11));
    assertEquals(Optional.of("Ann"), whose(secret), "use has put the end off");
    clock.pass(Duration.ofHours(12));
    assertEquals(Optional.empty(), whose(secret));
  }

  @Test
  void aSessionEndsAfterSevenDaysHoweverMuchItIsUsed() {
    String secret = people.sessions().begin(ann);
    for (int hours = 0; hours < 7 * 24 - 6; hours += 6) {
      assertEquals(Optional.of("Ann"), whose(secret), "after " + hours + " hours");
      clock.pass(Duration.ofHours(6));
    }
    clock.pass(Duration.ofHours(6));
    assertEquals(Optional.empty(), whose(secret));
  }

  @Test
  void itOutlivesARestartAndWhatIsKeptOpensNothing() {
    String secret = people.sessions().begin(ann);
    List<String> kept = new ArrayList<>();
    store.workingCopies().forEach("session", copy -> kept.add(copy.key() + copy.json()));
    assertEquals(1, kept.size());
    assertFalse(kept.get(0).contains(secret));
    assertEquals(Optional.empty(), whose(kept.get(0).substring(0, 64)));
    store.close();
    store = DocumentStore.open(home, clock);
    people = People.of(store.workingCopies(), store.trail(), clock);
    assertEquals(Optional.of("Ann"), whose(secret));
  }

  @Test
  void itEndsWithSigningOutANewPasswordAndAClosedAccount() {
    String out = people.sessions().begin(ann);
    people.sessions().end(out);
    assertEquals(Optional.empty(), whose(out));

    String old = people.sessions().begin(ann);
    Account renewed =
        people.accounts().change("Ann", now -> now.withPassword("other", false), "").orElseThrow();
    assertEquals(Optional.empty(), whose(old));

    String again = people.sessions().begin(renewed);
    assertEquals(Optional.of("Ann"), whose(again));
    people.accounts().change("Ann", now -> now.with(Role.READER), "");
    assertEquals(
        Optional.of(Role.READER),
        people.sessions().account(again).map(Account::role),
        "another role holds at once");
    people.accounts().change("Ann", Account::shut, "");
    assertEquals(Optional.empty(), whose(again));
    assertFalse(people.accounts().any());
  }

  @Test
  void secretsAreNeverTheSameAndOfManyTheOldestEnds() {
    String first = people.sessions().begin(ann);
    clock.pass(Duration.ofMinutes(1));
    String second = people.sessions().begin(ann);
    assertNotEquals(first, second);
    // 256 bits in the letters of RFC 4648, 5: 43 of them.
    assertTrue(first.matches("[A-Za-z0-9_-]{43}"), first);
    for (int i = 0; i < Sessions.MOST_OF_ONE - 1; i++) {
      clock.pass(Duration.ofMinutes(1));
      people.sessions().begin(ann);
    }
    assertEquals(Optional.empty(), whose(first));
    assertEquals(Optional.of("Ann"), whose(second));
  }

  @Test
  void aTokenEndsAtItsEndIsNeverAboveItsPersonAndEndsWithHer() {
    String secret = people.tokens().make(ann, "nightly", Role.EXTRACTOR, Duration.ofDays(10));
    assertEquals(Role.EXTRACTOR, people.tokens().asking(secret).orElseThrow().role());
    people.accounts().change("Ann", now -> now.with(Role.READER), "");
    assertEquals(Role.READER, people.tokens().asking(secret).orElseThrow().role());
    clock.pass(Duration.ofDays(10).minusSeconds(1));
    assertTrue(people.tokens().asking(secret).isPresent());
    clock.pass(Duration.ofSeconds(1));
    assertEquals(Optional.empty(), people.tokens().asking(secret));

    String other = people.tokens().make(ann, "other", Role.READER, Duration.ofDays(365));
    people.accounts().change("Ann", Account::shut, "");
    assertEquals(Optional.empty(), people.tokens().asking(other));
  }

  @Test
  void aTokenTellsItsLastUseAndIsEndedByItsId() {
    String secret = people.tokens().make(ann, "nightly", Role.READER, Duration.ofDays(1));
    Token token = people.tokens().of(ann).get(0);
    assertEquals(Optional.empty(), token.used());
    people.tokens().asking(secret);
    assertEquals(Optional.of(clock.instant()), people.tokens().of(ann).get(0).used());
    assertTrue(people.tokens().end(token.id()).isPresent());
    assertEquals(Optional.empty(), people.tokens().asking(secret));
    assertEquals(List.of(), people.tokens().all());
  }

  @Test
  void aTokenLastsAYearAtMostAndMayNoMoreThanItsPerson() {
    Duration tooLong = Token.LONGEST.plusSeconds(1);
    assertThrows(
        IllegalArgumentException.class, () -> people.tokens().make(ann, "x", Role.READER, tooLong));
    assertThrows(
        IllegalArgumentException.class,
        () -> people.tokens().make(ann, "x", Role.ADMINISTRATOR, Duration.ofDays(1)));
  }

  @Test
  void aNameIsGivenOnceWhateverItsCapitalsAndStaysTakenWhenClosed() {
    assertFalse(people.accounts().add(Account.begun("ANN", Role.READER, "x", clock), ""));
    people.accounts().change("ann", Account::shut, "");
    assertFalse(people.accounts().add(Account.begun("ann", Role.READER, "x", clock), ""));
    for (String no : List.of("", " ", "-x", "a/b", "x".repeat(41), "<b>", "=1+1")) {
      assertEquals(Optional.empty(), Account.tidy(no), no);
    }
    assertEquals(Optional.of("Zoë O'Neil-Ber"), Account.tidy("  Zoe\u0308  O'Neil-Ber "));
  }
}
