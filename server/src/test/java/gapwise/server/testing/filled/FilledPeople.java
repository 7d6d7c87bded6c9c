package gapwise.server.testing.filled;

import gapwise.server.account.Role;
import gapwise.server.testing.Team;

/** Accounts of every role, with sessions, tokens and a trail, each looked at by whom it is for. */
final class FilledPeople {
  private FilledPeople() {}

  /** Makes them; gives the session of one who administers, whose name is as long as may be. */
  static String into(Filling filling, String longName) throws Exception {
    Team team = new Team(filling.running());
    String administrator = value(team.session(team.add(longName, Role.ADMINISTRATOR)));
    String extracting = team.session(team.of(Role.EXTRACTOR));
    String extractor = value(extracting);
    String reader = value(team.session(team.of(Role.READER)));
    for (Role role : Role.values()) {
      team.token(team.of(role));
      team.add("Second " + role.word(), role);
    }
    for (String study : new String[] {"quell-2031", "marl-2032", "tarn-2033"}) {
      team.post("/desk", extracting, "study", study);
    }
    filling.shows("people: signing in", "/sign-in");
    filling.shows("people: one's own account", "/me", extractor);
    filling.shows("people: an administrator's own account", "/me", administrator);
    filling.shows("people: all accounts", "/people", administrator);
    filling.shows("people: the trail", "/people/trail", administrator);
    filling.shows("people: a reader's list of studies", "/studies", reader);
    filling.shows("people: a reader refused", "/desk", reader);
    filling.shows("people: an extractor's desk", "/desk", extractor);
    return administrator;
  }

  /** What stands behind the name of the cookie. */
  private static String value(String cookie) {
    return cookie.substring(cookie.indexOf('=') + 1);
  }
}
