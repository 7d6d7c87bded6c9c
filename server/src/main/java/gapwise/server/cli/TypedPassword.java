package gapwise.server.cli;

import gapwise.server.account.Passwords;
import java.io.BufferedReader;
import java.io.Console;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.util.Arrays;
import java.util.Optional;

/**
 * A password as it is typed: never part of the command, where others on the machine could read it.
 */
final class TypedPassword {
  private TypedPassword() {}

  /**
   * Asks for one twice where a person sits there, else reads one line.
   *
   * @return empty where it cannot be taken, which was told
   */
  static Optional<String> ask(String name) throws IOException {
    Console console = System.console();
    Optional<String> typed = console == null ? line() : twice(console);
    if (typed.isEmpty()) {
      return typed;
    }
    Optional<String> wrong = Passwords.wrong(typed.get(), name);
    wrong.ifPresent(System.err::println);
    return wrong.isPresent() ? Optional.empty() : typed;
  }

  private static Optional<String> twice(Console console) {
    char[] first = console.readPassword("Password: ");
    char[] second = console.readPassword("The same again: ");
    if (first == null || second == null || !Arrays.equals(first, second)) {
      System.err.println("The two are not alike. Nothing was changed.");
      return Optional.empty();
    }
    return Optional.of(new String(first));
  }

  private static Optional<String> line() throws IOException {
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));
    Optional<String> line = Optional.ofNullable(in.readLine());
    if (line.isEmpty()) {
      System.err.println("No password came by standard input. Nothing was changed.");
    }
    return line;
  }
}
