package gapwise.server.page.people;

import gapwise.server.account.Gate;
import gapwise.server.account.Passwords;
import gapwise.server.account.People;
import gapwise.server.account.SignIn;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import gapwise.server.security.Reach;

/** All pages of people. They belong to no state of the evidence base. */
public final class PeoplePages {
  private final SignInPage signIn;
  private final OwnPage own;
  private final TeamPage team;
  private final TrailPage trail;

  /**
   * @param gate gives and takes back sessions
   * @param reach from where the server can be reached
   */
  public PeoplePages(Templates templates, Sites sites, People people, Gate gate, Reach reach) {
    Passwords passwords = new Passwords();
    SignIn signing = new SignIn(people, passwords);
    this.signIn = new SignInPage(templates, sites, people, signing, gate, reach);
    this.own =
        new OwnPage(templates, sites, people, new OwnPage.Keys(signing, passwords), gate, reach);
    this.team = new TeamPage(templates, sites, people, passwords, gate);
    this.trail = new TrailPage(templates, sites, people);
  }

  /** The page that is answered where it must be known who asks. */
  public SignInPage signIn() {
    return signIn;
  }

  /** Adds the routes of all. */
  public void addTo(Routes routes) {
    signIn.addTo(routes);
    own.addTo(routes);
    team.addTo(routes);
    trail.addTo(routes);
  }
}
