package gapwise.server.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.account.Account;
import gapwise.server.account.Right;
import gapwise.server.account.Role;
import gapwise.server.testing.RunningServer;
import gapwise.server.testing.Team;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Every route that the running server has, asked by every role, by a browser and by a program, and
 * by nobody. What the server does is held against the table below, which does not come from it.
 */
class RightsTest {
  private static final Set<String> METHODS = Set.of("GET", "POST", "PUT", "DELETE", "PATCH");

  /** Who may do what, written down apart from the code that decides it. */
  private static final Map<Role, Set<Right>> TABLE =
      Map.of(
          Role.READER, Set.of(Right.OPEN, Right.SEE, Right.OWN),
          Role.EXTRACTOR, Set.of(Right.OPEN, Right.SEE, Right.OWN, Right.EXTRACT),
          Role.ADJUDICATOR, Set.of(Right.OPEN, Right.SEE, Right.OWN, Right.EXTRACT, Right.SETTLE),
          Role.ADMINISTRATOR, Set.of(Right.values()));

  private static final Set<Right> BY_TOKEN =
      Set.of(Right.OPEN, Right.SEE, Right.EXTRACT, Right.SETTLE);

  @TempDir static Path folder;
  private static RunningServer running;
  private static Team team;
  private static final Map<String, Right> ROUTES = new TreeMap<>();

  @BeforeAll
  static void start() {
    running = RunningServer.withStudies(folder.resolve("team"));
    team = new Team(running);
    running
        .server()
        .rights()
        .forEach(
            (route, roles) -> {
              if (METHODS.contains(route.substring(0, route.indexOf(' ')))) {
                assertEquals(1, roles.size(), route + " must name the one right that it asks for");
                ROUTES.put(route, (Right) roles.iterator().next());
              }
            });
    assertTrue(ROUTES.size() > 150, "routes were found: " + ROUTES.size());
  }

  @AfterAll
  static void stop() {
    running.close();
  }

  @Test
  void whatIsOpenToAnybodyIsListedHere() {
    Set<String> open = new TreeSet<>();
    ROUTES.forEach(
        (route, right) -> {
          if (right == Right.OPEN && !route.startsWith("GET /assets/")) {
            open.add(route);
          }
        });
    assertEquals(Set.of("GET /favicon.ico", "GET /health", "GET /sign-in", "POST /sign-in"), open);
  }

  @Test
  void whatWritesIsOpenToNoReader() {
    Set<String> byReaders = new TreeSet<>();
    ROUTES.forEach(
        (route, right) -> {
          if (route.startsWith("POST ") && right == Right.SEE) {
            byReaders.add(route);
          }
        });
    // These compute what is sent and keep nothing.
    byReaders.removeIf(route -> route.startsWith("POST /api/v1/figure"));
    assertEquals(Set.of("POST /api/v1/methods", "POST /api/v1/syntheses"), byReaders);
  }

  @ParameterizedTest
  @EnumSource(Role.class)
  void aBrowserIsAnsweredWhereItsPersonMayAndNowhereElse(Role role) throws Exception {
    Account account = team.of(role);
    String session = team.session(account);
    List<String> wrong = new ArrayList<>();
    long before = running.home().base().lastChange();
    for (Map.Entry<String, Right> route : ROUTES.entrySet()) {
      String own = route.getKey().endsWith("/sign-out") ? team.session(account) : session;
      HttpResponse<String> answer =
          running.send(request(route.getKey()).header("Cookie", own).header("Origin", origin()));
      boolean may = TABLE.get(role).contains(route.getValue());
      hold(route.getKey(), may, 403, answer.statusCode(), wrong);
    }
    assertEquals(List.of(), wrong);
    assertEquals(before, running.home().base().lastChange(), "nothing was written");
  }

  @ParameterizedTest
  @EnumSource(Role.class)
  void aProgramIsAnsweredWhereItsRoleMayAndNeverTouchesAccounts(Role role) throws Exception {
    String token = team.token(team.of(role));
    List<String> wrong = new ArrayList<>();
    for (Map.Entry<String, Right> route : ROUTES.entrySet()) {
      HttpResponse<String> answer =
          running.send(request(route.getKey()).header("Authorization", "Bearer " + token));
      Right right = route.getValue();
      boolean may = TABLE.get(role).contains(right) && BY_TOKEN.contains(right);
      hold(route.getKey(), may, 403, answer.statusCode(), wrong);
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void nobodyIsAnsweredBeforeSigningInButWhereItIsOpen() throws Exception {
    List<String> wrong = new ArrayList<>();
    long before = running.home().base().lastChange();
    for (Map.Entry<String, Right> route : ROUTES.entrySet()) {
      HttpResponse<String> answer =
          running.send(request(route.getKey()).header("Origin", origin()));
      boolean open = route.getValue() == Right.OPEN;
      hold(route.getKey(), open, 401, answer.statusCode(), wrong);
      if (!open) {
        assertTrue(answer.headers().firstValue("WWW-Authenticate").isPresent(), route.getKey());
        assertFalse(answer.body().contains("Alder Bay"), route.getKey() + " tells of a study");
        boolean program = route.getKey().contains(" /api/");
        String type = answer.headers().firstValue("Content-Type").orElse("");
        assertEquals(program, type.startsWith("application/problem+json"), route.getKey());
      }
    }
    assertEquals(List.of(), wrong);
    assertEquals(before, running.home().base().lastChange(), "nothing was written");
  }

  @Test
  void aWrongTokenIsNobodyEvenBesideASession() throws Exception {
    String session = team.session(team.of(Role.ADMINISTRATOR));
    HttpResponse<String> answer =
        running.send(
            running
                .request("/api/v1/studies")
                .header("Cookie", session)
                .header("Authorization", "Bearer gapwise_made-up"));
    assertEquals(401, answer.statusCode());
  }

  @Test
  void askingForTheHeadOnlyTellsNoMoreThanAskingForAll() throws Exception {
    for (String path : List.of("/studies", "/api/v1/studies", "/people")) {
      HttpResponse<String> answer =
          running.send(running.request(path).method("HEAD", BodyPublishers.noBody()));
      assertEquals(401, answer.statusCode(), path);
    }
    String session = team.session(team.of(Role.READER));
    HttpResponse<String> answer =
        running.send(
            running
                .request("/studies")
                .header("Cookie", session)
                .method("HEAD", BodyPublishers.noBody()));
    assertEquals(200, answer.statusCode());
  }

  /** On one's own machine nothing of this is in the way. */
  @Test
  void withoutAccountsEverythingIsAnswered(@TempDir Path other) throws Exception {
    try (RunningServer alone = RunningServer.withStudies(other)) {
      List<String> wrong = new ArrayList<>();
      for (String route : ROUTES.keySet()) {
        HttpRequest.Builder request = request(route, alone);
        hold(route, true, 0, alone.send(request).statusCode(), wrong);
      }
      assertEquals(List.of(), wrong);
      assertTrue(alone.get("/import").body().contains("name=\"who\""));
      assertEquals(List.of(), alone.home().people().trail().before("", Long.MAX_VALUE, 9));
    }
  }

  private static void hold(String route, boolean may, int refusal, int status, List<String> wrong) {
    boolean refused = status == 401 || status == 403;
    if (may ? refused || status >= 500 : status != refusal) {
      wrong.add(route + " answered " + status + (may ? " and may" : " and may not"));
    }
  }

  private static String origin() {
    return running.address("");
  }

  private static HttpRequest.Builder request(String route) {
    return request(route, running);
  }

  private static HttpRequest.Builder request(String route, RunningServer server) {
    String method = route.substring(0, route.indexOf(' '));
    String path = route.substring(route.indexOf(' ') + 1).replaceAll("\\{[^}]*}", "none-such");
    return server.request(path).method(method, BodyPublishers.noBody());
  }
}
