package gapwise.server.page.people;

import static gapwise.sentence.Sentences.say;

import gapwise.server.account.Actor;
import gapwise.server.account.Deeds;
import gapwise.server.account.Gate;
import gapwise.server.account.People;
import gapwise.server.account.Right;
import gapwise.server.account.SignIn;
import gapwise.server.address.PagePaths;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import gapwise.server.security.Reach;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

/** Signing in and out. */
public final class SignInPage {
  /** A path of this server and nothing that a browser could take for the name of another. */
  private static final Pattern OWN_PATH =
      Pattern.compile("/(?![/\\\\])[\\x21-\\x7e&&[^\\\\]]{0,2000}");

  private final Templates templates;
  private final Sites sites;
  private final People people;
  private final SignIn signIn;
  private final Gate gate;
  private final Reach reach;

  SignInPage(
      Templates templates, Sites sites, People people, SignIn signIn, Gate gate, Reach reach) {
    this.templates = templates;
    this.sites = sites;
    this.people = people;
    this.signIn = signIn;
    this.gate = gate;
    this.reach = reach;
  }

  /**
   * What the template shows.
   *
   * @param accounts whether there is any account
   * @param words why one is asked to sign in, or what was wrong; may be empty
   * @param name what was typed as the name
   * @param next where to go then
   */
  public record View(Site site, boolean accounts, String words, String name, String next) {
    public View {
      Objects.requireNonNull(site, "site");
    }
  }

  void addTo(Routes routes) {
    routes.get(PagePaths.SIGN_IN, Right.OPEN, context -> show(context, "", "", asked(context)));
    routes.post(PagePaths.SIGN_IN, Right.OPEN, this::attempt);
    routes.post(PagePaths.SIGN_OUT, Right.OWN, this::leave);
  }

  private static String asked(Context context) {
    return ownPath(Optional.ofNullable(context.queryParam("next")).orElse(""));
  }

  /** Where to go next; the first page for whatever is no path of ours. */
  static String ownPath(String asked) {
    boolean again = asked.startsWith(PagePaths.SIGN_IN) || asked.startsWith(PagePaths.SIGN_OUT);
    return OWN_PATH.matcher(asked).matches() && !again ? asked : PagePaths.EVIDENCE;
  }

  private void show(Context context, String words, String name, String next) {
    Site site = sites.of(say("people.sign-in-title"), Place.NONE);
    View view = new View(site, people.accounts().any(), words, name, next);
    templates.show(context, "people/SignInPage", view);
  }

  /** Answers with this page at the address that it must be known for who asks. */
  public void instead(Context context, String words) {
    String query = context.queryString() == null ? "" : "?" + context.queryString();
    boolean reading = context.req().getMethod().equals("GET");
    context.status(HttpStatus.UNAUTHORIZED);
    show(context, words, "", ownPath(reading ? context.path() + query : ""));
  }

  private void attempt(Context context) {
    PostedForm form = new PostedForm(context);
    String next = ownPath(form.first("next"));
    String name = form.first("name");
    String password = form.values("password").stream().findFirst().orElse("");
    if (name.isEmpty() || password.isEmpty()) {
      context.status(HttpStatus.UNPROCESSABLE_CONTENT);
      show(context, say("people.both"), name, next);
      return;
    }
    SignIn.Outcome outcome =
        signIn.attempt(name, password, reach.peer(context), reach.shortPeer(context));
    if (outcome instanceof SignIn.Outcome.Welcome welcome) {
      gate.welcome(context, welcome.secret());
      context.redirect(next, HttpStatus.SEE_OTHER);
    } else if (outcome instanceof SignIn.Outcome.Wait wait) {
      long seconds = wait.left().plusMillis(999).toSeconds();
      context.status(HttpStatus.TOO_MANY_REQUESTS).header("Retry-After", Long.toString(seconds));
      show(context, say("people.wait", Map.of("seconds", seconds)), name, next);
    } else {
      context.status(HttpStatus.UNPROCESSABLE_CONTENT);
      show(context, say("people.wrong"), name, next);
    }
  }

  private void leave(Context context) {
    if (Actor.now().account().isPresent()) {
      gate.deeds(context).add(Deeds.Kind.SIGN_OUT, "", "");
    }
    gate.farewell(context);
    context.redirect(PagePaths.SIGN_IN, HttpStatus.SEE_OTHER);
  }
}
