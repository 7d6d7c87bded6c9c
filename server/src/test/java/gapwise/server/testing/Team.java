package gapwise.server.testing;

import gapwise.server.account.Account;
import gapwise.server.account.Passwords;
import gapwise.server.account.People;
import gapwise.server.account.Role;
import java.io.IOException;
import java.net.URLEncoder;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.EnumMap;
import java.util.Map;

/** A person of each role, invented, each with the same password, and ways to ask in their names. */
public final class Team {
  /** Of all of them. */
  public static final String PASSWORD = "seven quiet herons wade";

  private static final Map<Role, String> NAMES =
      Map.of(
          Role.READER, "Rena",
          Role.EXTRACTOR, "Eddo",
          Role.ADJUDICATOR, "Adele",
          Role.ADMINISTRATOR, "Mina");

  private final RunningServer server;
  private final People people;
  private final String hash = new Passwords().hash(PASSWORD);
  private final Map<Role, Account> accounts = new EnumMap<>(Role.class);

  /** Makes their accounts. */
  public Team(RunningServer server) {
    this.server = server;
    this.people = server.home().people();
    NAMES.forEach((role, name) -> accounts.put(role, add(name, role)));
  }

  /** Adds one more. */
  public Account add(String name, Role role) {
    Account account = Account.begun(name, role, hash, people.clock());
    people.accounts().add(account, "test");
    return account;
  }

  /** The one of a role. */
  public Account of(Role role) {
    return accounts.get(role);
  }

  /** A new session of a person, as the header of a browser has it. */
  public String session(Account account) {
    return "gapwise-session=" + people.sessions().begin(account);
  }

  /** A new token of a person with her own role. */
  public String token(Account account) {
    return people.tokens().make(account, "test", account.role(), Duration.ofDays(1));
  }

  /** What a path answers to a browser. */
  public HttpResponse<String> get(String path, String session)
      throws IOException, InterruptedException {
    return server.send(server.request(path).header("Cookie", session).GET());
  }

  /** What a form of a page of the server itself is answered. */
  public HttpResponse<String> post(String path, String session, String... fields)
      throws IOException, InterruptedException {
    return server.send(form(path, fields).header("Cookie", session));
  }

  /** A form as a page of the server sends it, names and values by turns. */
  public HttpRequest.Builder form(String path, String... fields) {
    StringBuilder body = new StringBuilder();
    for (int i = 0; i < fields.length; i += 2) {
      body.append(i == 0 ? "" : "&")
          .append(fields[i])
          .append('=')
          .append(URLEncoder.encode(fields[i + 1], StandardCharsets.UTF_8));
    }
    return server
        .request(path)
        .header("Origin", server.address(""))
        .header("Content-Type", "application/x-www-form-urlencoded")
        .POST(HttpRequest.BodyPublishers.ofString(body.toString()));
  }
}
