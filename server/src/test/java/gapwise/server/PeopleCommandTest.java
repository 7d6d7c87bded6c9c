package gapwise.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.home.Records;
import gapwise.store.Trail;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Accounts looked after by command, and a server that others would reach without any. */
class PeopleCommandTest {
  private static final String GOOD = "seven quiet herons wade";
  @TempDir Path folder;

  /** What a command ended with, and what it said. */
  private record Said(int code, String out, String error) {}

  private Said run(String typed, String... words) {
    List<String> arguments = new ArrayList<>(List.of(words));
    arguments.addAll(List.of("--home", folder.resolve("home").toString()));
    PrintStream out = System.out;
    PrintStream error = System.err;
    InputStream in = System.in;
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    ByteArrayOutputStream told = new ByteArrayOutputStream();
    try {
      System.setOut(new PrintStream(said, true, StandardCharsets.UTF_8));
      System.setErr(new PrintStream(told, true, StandardCharsets.UTF_8));
      System.setIn(new ByteArrayInputStream((typed + "\n").getBytes(StandardCharsets.UTF_8)));
      int code = Gapwise.commandLine().execute(arguments.toArray(String[]::new));
      return new Said(
          code, said.toString(StandardCharsets.UTF_8), told.toString(StandardCharsets.UTF_8));
    } finally {
      System.setOut(out);
      System.setErr(error);
      System.setIn(in);
    }
  }

  @Test
  void accountsAreAddedChangedAndClosedWithThePasswordNeverPartOfTheCommand() {
    Said reader = run(GOOD, "people", "add", "Rena", "--role", "reader");
    assertEquals(2, reader.code());
    assertTrue(reader.error().contains("The first account is that of an administrator"));
    Said low = run("short", "people", "add", "Mina", "--role", "administrator");
    assertEquals(2, low.code());
    assertTrue(low.error().contains("from 12 to 128 letters"), low.error());
    assertEquals(0, run(GOOD, "people", "add", "Mina", "--role", "administrator").code());
    assertEquals(2, run(GOOD, "people", "add", "MINA", "--role", "reader").code());
    assertEquals(0, run(GOOD, "people", "add", "Rena", "--role", "reader").code());
    assertEquals("Mina\tadministrator\nRena\treader\n", run("", "people", "list").out());
    assertEquals(2, run("", "people", "role", "Mina", "reader").code(), "the last administrator");
    assertEquals(2, run("", "people", "role", "Rena", "queen").code());
    assertEquals(0, run("", "people", "role", "rena", "extractor").code());
    assertEquals(0, run("other words by far", "people", "password", "Rena").code());
    assertEquals(2, run("", "people", "close", "Mina").code(), "while another is open");
    assertEquals(0, run("", "people", "close", "Rena").code());
    Said last = run("", "people", "close", "Mina");
    assertEquals(0, last.code());
    assertTrue(last.error().contains("That was the last account."), last.error());
    assertEquals("Mina\tclosed\nRena\tclosed\n", run("", "people", "list").out());
    try (Records records = Records.openExisting(folder.resolve("home"), Clock.systemUTC())) {
      List<String> kinds =
          records.people().trail().before("", Long.MAX_VALUE, 20).stream()
              .map(Trail.Entry::deed)
              .map(deed -> deed.kind() + " " + deed.subject())
              .toList();
      assertEquals(
          List.of(
              "account-closed Mina",
              "account-closed Rena",
              "password-changed Rena",
              "role-changed Rena",
              "account-made Rena",
              "account-made Mina"),
          kinds);
    }
  }

  @Test
  void aServerThatOthersWouldReachIsRefusedWithTheCommandThatHelps() {
    for (String[] words :
        new String[][] {
          {"serve", "--host", "0.0.0.0", "--port", "0"},
          {"serve", "--host", "192.0.2.1", "--port", "0"},
          {"serve", "--behind-proxy", "--port", "0"}
        }) {
      Said refused = run("", words);
      assertEquals(2, refused.code(), refused.error());
      assertTrue(
          refused.error().contains("gapwise people add NAME --role administrator"),
          refused.error());
      assertFalse(refused.error().contains("Exception"), refused.error());
    }
  }
}
