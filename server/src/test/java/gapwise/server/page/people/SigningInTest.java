package gapwise.server.page.people;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.account.Account;
import gapwise.server.account.NoAccountsException;
import gapwise.server.account.Role;
import gapwise.server.admission.Bounds;
import gapwise.server.home.Home;
import gapwise.server.security.Reach;
import gapwise.server.testing.RunningServer;
import gapwise.server.testing.Team;
import gapwise.server.web.WebServer;
import gapwise.store.Trail;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Signing in, staying signed in, and what ends it, against a running server. */
class SigningInTest {
  @TempDir static Path folder;
  private static RunningServer running;
  private static Team team;

  @BeforeAll
  static void start() {
    running = RunningServer.withStudies(folder.resolve("home"));
    team = new Team(running);
  }

  @AfterAll
  static void stop() {
    running.close();
  }

  private static HttpResponse<String> signIn(String name, String password, String next)
      throws Exception {
    return running.send(team.form("/sign-in", "name", name, "password", password, "next", next));
  }

  private static String cookie(HttpResponse<String> answer) {
    return answer.headers().firstValue("Set-Cookie").orElseThrow();
  }

  private static String location(HttpResponse<String> answer) {
    return answer.headers().firstValue("Location").orElse("");
  }

  @Test
  void theFormLeadsToWhereOneWantedToGoWithACookieThatNoScriptReads() throws Exception {
    HttpResponse<String> asked = running.get("/pooled?outcome=union&from=5");
    assertEquals(401, asked.statusCode());
    assertTrue(asked.body().contains("value=\"/pooled?outcome=union&amp;from=5\""), asked.body());
    assertFalse(asked.body().contains("Invented data"), "nothing is told of the evidence");
    HttpResponse<String> in = signIn("rena", Team.PASSWORD, "/pooled?outcome=union&from=5");
    assertEquals(303, in.statusCode(), in.body());
    assertTrue(location(in).endsWith("/pooled?outcome=union&from=5"), location(in));
    String cookie = cookie(in);
    assertTrue(
        cookie.matches("gapwise-session=[\\w-]{43}; Path=/; HttpOnly; SameSite=Lax"), cookie);
    HttpResponse<String> page = team.get("/studies", cookie.split(";")[0]);
    assertEquals(200, page.statusCode());
    assertTrue(page.body().contains("Rena") && page.body().contains("Sign out"));
    assertFalse(page.body().contains("href=\"/desk\""), "a reader is shown no way to the desk");
  }

  @ParameterizedTest
  @CsvSource({
    "//elsewhere.example/, /",
    "https://elsewhere.example/, /",
    "/\\elsewhere.example, /",
    "'/\t/elsewhere.example', /",
    "javascript:alert(1), /",
    "/sign-in?next=/studies, /",
    "/studies?q=a, /studies?q=a"
  })
  void nobodyIsLedElsewhere(String next, String target) throws Exception {
    assertEquals(target, SignInPage.ownPath(next));
    String session = "";
    HttpResponse<String> in = signIn("Rena", Team.PASSWORD, next);
    assertEquals(303, in.statusCode());
    assertTrue(location(in).replaceFirst("^http://127.0.0.1:\\d+", "").equals(target), session);
  }

  @Test
  void aSecretThatWasPlantedBeforeIsWorthNothing() throws Exception {
    String planted = "gapwise-session=" + "A".repeat(43);
    HttpResponse<String> in =
        running.send(
            team.form("/sign-in", "name", "Rena", "password", Team.PASSWORD)
                .header("Cookie", planted));
    assertFalse(cookie(in).startsWith(planted));
    assertEquals(401, team.get("/studies", planted).statusCode());
    // Nor does one that was good before live on beside the new one.
    String before = team.session(team.of(Role.READER));
    running.send(
        team.form("/sign-in", "name", "Rena", "password", Team.PASSWORD).header("Cookie", before));
    assertEquals(401, team.get("/studies", before).statusCode());
  }

  @Test
  void signingOutEndsTheSessionItself() throws Exception {
    String session = team.session(team.of(Role.READER));
    assertEquals(200, team.get("/studies", session).statusCode());
    HttpResponse<String> out = team.post("/sign-out", session);
    assertTrue(cookie(out).contains("Max-Age=0"));
    assertEquals(401, team.get("/studies", session).statusCode());
  }

  @Test
  void aWrongPasswordAndAnUnknownNameAreAnsweredAlikeAndThenSlowly() throws Exception {
    Account slow = team.add("Slowly", Role.READER);
    String wrong = signIn(slow.name(), "not the password", "/").body();
    assertTrue(wrong.contains("The name or the password is not right."));
    String unknown = signIn("Nobodyhere", "not the password", "/").body();
    assertEquals(wrong.replace("Slowly", ""), unknown.replace("Nobodyhere", ""));
    signIn(slow.name(), "not the password", "/");
    signIn(slow.name(), "not the password", "/");
    HttpResponse<String> wait = signIn(slow.name(), Team.PASSWORD, "/");
    assertEquals(429, wait.statusCode(), "the right password waits too");
    assertEquals("1", wait.headers().firstValue("Retry-After").orElseThrow());
    assertTrue(wait.body().contains("Wait 1 second, then try it again."));
    List<Trail.Entry> kept = running.home().people().trail().before("", Long.MAX_VALUE, 50);
    assertFalse(kept.toString().contains("Nobodyhere"), "it may have been a password");
    assertTrue(
        kept.stream().anyMatch(one -> one.deed().outcome().equals("no such name")), "" + kept);
  }

  @Test
  void whatWritesByACookieMustComeFromAPageOfOurs() throws Exception {
    String session = team.session(team.of(Role.ADJUDICATOR));
    for (String path : List.of("/studies/invented-03/withdraw", "/api/v1/imports", "/sign-out")) {
      HttpResponse<String> silent =
          running.send(
              running.request(path).header("Cookie", session).POST(BodyPublishers.noBody()));
      assertEquals(403, silent.statusCode(), path);
      HttpResponse<String> foreign =
          running.send(
              running
                  .request(path)
                  .header("Cookie", session)
                  .header("Origin", "http://elsewhere.example")
                  .POST(BodyPublishers.noBody()));
      assertEquals(403, foreign.statusCode(), path);
    }
    assertEquals(200, team.get("/studies", session).statusCode(), "nobody was signed out");
  }

  @Test
  void whatIsKeptStandsUnderTheAccountWhateverTheFormSays() throws Exception {
    String session = team.session(team.of(Role.ADJUDICATOR));
    HttpResponse<String> done =
        team.post(
            "/studies/invented-05/withdraw",
            session,
            "seen",
            "1",
            "why",
            "read twice",
            "who",
            "Somebody Else");
    assertEquals(303, done.statusCode(), done.body());
    String history = team.get("/api/v1/studies/invented-05/history", session).body();
    assertTrue(history.contains("Adele") && !history.contains("Somebody Else"), history);
    assertFalse(team.get("/studies/invented-06", session).body().contains("name=\"who\""));
    Trail.Deed last =
        running.home().people().trail().before("Adele", Long.MAX_VALUE, 1).get(0).deed();
    assertEquals("write", last.kind());
    assertEquals("POST /studies/invented-05/withdraw", last.subject());
    assertEquals("303", last.outcome());
    assertEquals("this machine", last.address());
  }

  @Test
  void aPasswordThatSomebodyElseMadeOpensOnePageUntilAnotherIsChosen() throws Exception {
    String admin = team.session(team.of(Role.ADMINISTRATOR));
    String made = team.post("/people", admin, "name", "Newly Come", "role", "extractor").body();
    String password = made.replaceFirst("(?s).*id=\"given\" class=\"secret\">([^<]*)<.*", "$1");
    HttpResponse<String> in = signIn("newly come", password, "/studies");
    String session = cookie(in).split(";")[0];
    HttpResponse<String> led = team.get("/studies", session);
    assertEquals(303, led.statusCode());
    assertTrue(location(led).endsWith("/me"));
    assertEquals(403, team.post("/desk", session, "study", "x").statusCode());
    assertEquals(
        422,
        team.post("/me/password", session, "old", "wrong", "new", "good long words", "again", "x")
            .statusCode());
    HttpResponse<String> changed =
        team.post(
            "/me/password",
            session,
            "old",
            password,
            "new",
            "own words of mine",
            "again",
            "own words of mine");
    assertEquals(200, changed.statusCode(), changed.body());
    assertEquals(401, team.get("/studies", session).statusCode(), "the old session is over");
    assertEquals(200, team.get("/studies", cookie(changed).split(";")[0]).statusCode());
  }

  @Test
  void theLastAdministratorStaysAndAClosedAccountIsOutAtOnce() throws Exception {
    String admin = team.session(team.of(Role.ADMINISTRATOR));
    assertEquals(409, team.post("/people/mina/close", admin).statusCode());
    assertEquals(409, team.post("/people/mina/role", admin, "role", "reader").statusCode());
    Account leaving = team.add("Leaving", Role.EXTRACTOR);
    String session = team.session(leaving);
    String token = team.token(leaving);
    assertEquals(303, team.post("/people/leaving/role", admin, "role", "reader").statusCode());
    assertEquals(403, team.get("/desk", session).statusCode());
    assertEquals(303, team.post("/people/leaving/close", admin).statusCode());
    assertEquals(401, team.get("/studies", session).statusCode());
    assertEquals(
        401,
        running
            .send(running.request("/api/v1/studies").header("Authorization", "Bearer " + token))
            .statusCode());
    assertEquals(
        409, team.post("/people", admin, "name", "LEAVING", "role", "reader").statusCode());
    String trail = team.get("/people/trail?person=Mina", admin).body();
    assertTrue(trail.contains("closed an account") && trail.contains("Leaving"), trail);
    String csv = team.get("/people/trail.csv", admin).body();
    assertTrue(csv.startsWith("number,when,person,kind,subject,outcome,from\r\n"), csv);
    assertTrue(csv.contains(",Mina,account-closed,Leaving,reader,this machine\r\n"), csv);
  }

  @Test
  void aTokenIsShownOnceWorksInItsPersonsNameAndIsEndedByAButton() throws Exception {
    String session = team.session(team.of(Role.EXTRACTOR));
    assertEquals(
        422,
        team.post("/me/tokens", session, "label", "x", "role", "administrator", "days", "9")
            .statusCode());
    assertEquals(
        422,
        team.post("/me/tokens", session, "label", "x", "role", "reader", "days", "366")
            .statusCode());
    String made =
        team.post("/me/tokens", session, "label", "nightly", "role", "reader", "days", "30").body();
    String token = made.replaceFirst("(?s).*(gapwise_[\\w-]{43}).*", "$1");
    String own = team.get("/me", session).body();
    assertTrue(own.contains("nightly") && !own.contains(token));
    var asking = running.request("/api/v1/studies").header("Authorization", "Bearer " + token);
    assertEquals(200, running.send(asking).statusCode());
    String id = own.replaceFirst("(?s).*/me/tokens/([0-9a-f]{12})/end.*", "$1");
    String other = team.session(team.of(Role.READER));
    assertEquals(404, team.post("/me/tokens/" + id + "/end", other).statusCode());
    assertEquals(303, team.post("/me/tokens/" + id + "/end", session).statusCode());
    assertEquals(401, running.send(asking).statusCode());
  }

  @Test
  void behindAServerThatEndsTlsTheCookieIsBoundToThisHost(@TempDir Path other) throws Exception {
    try (Home home = Home.open(other, Clock.systemUTC())) {
      assertThrows(NoAccountsException.class, () -> RunningServer.behindProxy(home));
    }
    Home home = Home.open(other, Clock.systemUTC());
    Account ann =
        Account.begun(
            "Ann",
            Role.ADMINISTRATOR,
            new gapwise.server.account.Passwords().hash(Team.PASSWORD),
            Clock.systemUTC());
    home.people().accounts().add(ann, "test");
    try (RunningServer behind = RunningServer.behindProxy(home)) {
      String body = "name=Ann&password=" + Team.PASSWORD.replace(' ', '+');
      HttpResponse<String> in =
          behind.send(
              behind
                  .request("/sign-in")
                  .header("Content-Type", "application/x-www-form-urlencoded")
                  .header("Origin", behind.address("").replace("http:", "https:"))
                  .header("X-Forwarded-Proto", "https")
                  .header("X-Forwarded-For", "203.0.113.9, 198.51.100.77")
                  .POST(BodyPublishers.ofString(body)));
      assertEquals(303, in.statusCode(), in.body());
      String cookie = cookie(in);
      assertTrue(cookie.startsWith("__Host-gapwise-session="), cookie);
      assertTrue(cookie.contains("; Secure") && cookie.contains("; HttpOnly"), cookie);
      Trail.Deed deed = home.people().trail().before("", Long.MAX_VALUE, 1).get(0).deed();
      assertEquals("198.51.100.0", deed.address(), "what the server before says, shortened");
      String session = cookie.split(";")[0];
      HttpResponse<String> plain =
          behind.send(
              behind
                  .request("/sign-out")
                  .header("Cookie", session)
                  .header("X-Forwarded-Proto", "https")
                  .header("Origin", behind.address(""))
                  .POST(BodyPublishers.noBody()));
      assertEquals(403, plain.statusCode(), "a page that came unguarded writes nothing");
    }
  }

  @Test
  void withoutASettingNoHeaderOfAProxyIsBelieved() throws Exception {
    HttpResponse<String> in =
        running.send(
            team.form("/sign-in", "name", "Rena", "password", Team.PASSWORD)
                .header("X-Forwarded-Proto", "https")
                .header("X-Forwarded-For", "198.51.100.77"));
    assertTrue(cookie(in).startsWith("gapwise-session="), cookie(in));
    Trail.Deed deed =
        running.home().people().trail().before("Rena", Long.MAX_VALUE, 1).get(0).deed();
    assertEquals("this machine", deed.address());
  }

  @Test
  void beyondThisMachineNothingIsAnsweredWithoutAccounts(@TempDir Path other) throws Exception {
    Reach everywhere = new Reach("0.0.0.0", false);
    try (Home home = Home.open(other, Clock.systemUTC())) {
      assertThrows(
          NoAccountsException.class,
          () -> WebServer.start(home, everywhere, 0, "test", Bounds.standard()));
      Account ann = Account.begun("Ann", Role.ADMINISTRATOR, "none", Clock.systemUTC());
      home.people().accounts().add(ann, "test");
      try (WebServer server = WebServer.start(home, everywhere, 0, "test", Bounds.standard())) {
        String address = "http://127.0.0.1:" + server.port();
        assertEquals(401, status(address + "/studies"));
        assertEquals(200, status(address + "/health"));
        home.people().accounts().change("Ann", Account::shut, "test");
        assertEquals(503, status(address + "/studies"), "the last account was closed meanwhile");
        assertEquals(503, status(address + "/health"));
      }
    }
  }

  private static int status(String address) throws Exception {
    return java.net.http.HttpClient.newHttpClient()
        .send(
            java.net.http.HttpRequest.newBuilder(java.net.URI.create(address)).build(),
            java.net.http.HttpResponse.BodyHandlers.discarding())
        .statusCode();
  }
}
