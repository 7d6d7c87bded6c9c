package gapwise.server.account;

import static gapwise.sentence.Sentences.say;

import gapwise.server.account.Actor.Way;
import gapwise.server.security.Reach;
import gapwise.server.security.SameOrigin;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import io.javalin.http.HttpStatus;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Stands before every route: finds out who asks, and lets through who has the right that the route
 * names. What is written by somebody with an account goes into the trail.
 */
public final class Gate {
  /** Where one looks after one's own account, which a given password leads to first. */
  public static final String OWN_PAGE = "/me";

  private static final Logger LOG = LoggerFactory.getLogger(Gate.class);
  private static final String BEARER = "bearer ";
  private static final String ASSETS = "/assets/";

  private final People people;
  private final Reach reach;
  private final Cookies cookies;

  public Gate(People people, Reach reach) {
    this.people = people;
    this.reach = reach;
    this.cookies = new Cookies(reach);
  }

  /**
   * Refuses to begin where others would reach what nobody guards.
   *
   * @throws NoAccountsException where they would
   */
  public void requireAccounts() {
    if (!reach.isThisMachineAlone() && !people.accounts().any()) {
      throw new NoAccountsException();
    }
  }

  /** Adds it before all routes, and the trail behind them. */
  public void addTo(RoutesConfig routes) {
    routes.before(this::enter);
    routes.beforeMatched(this::check);
    routes.after(this::leave);
  }

  /** The cookie of a session that was begun. */
  public void welcome(Context context, String secret) {
    cookies.secret(context).ifPresent(people.sessions()::end);
    cookies.give(context, secret);
  }

  /** Ends the session of a browser. */
  public void farewell(Context context) {
    cookies.secret(context).ifPresent(people.sessions()::end);
    cookies.take(context);
  }

  /** What is written into the trail of what the one who asks does. */
  public Deeds deeds(Context context) {
    return new Deeds(people.trail(), Actor.now().name().orElse(""), reach.shortPeer(context));
  }

  private void enter(Context context) {
    Actor.nobody().enter();
    if (!context.path().startsWith(ASSETS)) {
      who(context).enter();
    }
  }

  private Actor who(Context context) {
    String header = Optional.ofNullable(context.header("Authorization")).orElse("").strip();
    if (header.toLowerCase(Locale.ROOT).startsWith(BEARER)) {
      Tokens.Asking asking =
          people
              .tokens()
              .asking(header.substring(BEARER.length()).strip())
              .orElseThrow(() -> needed(context, say("people.no-token")));
      return new Actor(Way.TOKEN, Optional.of(asking.account()), asking.role());
    }
    Optional<Account> signedIn = cookies.secret(context).flatMap(people.sessions()::account);
    if (signedIn.isPresent()) {
      return new Actor(Way.SESSION, signedIn, signedIn.get().role());
    }
    if (people.accounts().any()) {
      return Actor.nobody();
    }
    requireAccounts();
    return Actor.alone();
  }

  private void check(Context context) {
    Right right = asked(context);
    if (right == Right.OPEN) {
      return;
    }
    Actor actor = Actor.now();
    if (actor.way() == Way.NOBODY) {
      boolean lost = !SameOrigin.isReading(context);
      throw needed(context, say(lost ? "people.sign-in-lost" : "people.sign-in-first"));
    }
    if (!actor.may(right)) {
      refuse(context, right, actor);
    }
    if (actor.way() == Way.SESSION) {
      checkSession(context, right, actor.account().orElseThrow());
    }
  }

  private static Right asked(Context context) {
    return context.routeRoles().stream()
        .filter(Right.class::isInstance)
        .map(Right.class::cast)
        .findFirst()
        // No route is added for the head alone: the web server says that there is one, and no more.
        .or(() -> Optional.of(Right.SEE).filter(head -> context.req().getMethod().equals("HEAD")))
        .orElseThrow(() -> new ForbiddenResponse(say("people.no-right")));
  }

  private void refuse(Context context, Right right, Actor actor) {
    deeds(context).add(Deeds.Kind.REFUSED, context.method() + " " + context.path(), "403");
    boolean byToken = actor.way() == Way.TOKEN && actor.role().may(right);
    throw new ForbiddenResponse(
        byToken
            ? say("people.not-by-token")
            : say("people.not-yours", Map.of("who", right.who(), "role", actor.role().word())));
  }

  private static void checkSession(Context context, Right right, Account account) {
    if (!SameOrigin.isReading(context) && !SameOrigin.isFromOurPage(context)) {
      throw new ForbiddenResponse(say("people.not-our-page"));
    }
    if (account.given() && right != Right.OWN) {
      if (SameOrigin.isReading(context) && !context.path().startsWith("/api/")) {
        context.redirect(OWN_PAGE, HttpStatus.SEE_OTHER);
        context.skipRemainingHandlers();
      } else {
        throw new ForbiddenResponse(say("people.choose-first"));
      }
    }
  }

  /** RFC 9110 (15.5.2) asks for the header wherever it must be known who asks. */
  private static SignInNeededException needed(Context context, String words) {
    context.header("WWW-Authenticate", "Bearer realm=\"Gapwise\"");
    return new SignInNeededException(words);
  }

  /**
   * What was written is in the records by now; a trail that cannot be written takes nothing back.
   */
  private void leave(Context context) {
    try {
      // What is done to accounts is told one by one where it is done.
      boolean writes =
          context.routeRoles().contains(Right.EXTRACT)
              || context.routeRoles().contains(Right.SETTLE);
      boolean let = context.statusCode() != HttpStatus.FORBIDDEN.getCode();
      if (writes && let && !SameOrigin.isReading(context) && Actor.now().name().isPresent()) {
        deeds(context)
            .add(
                Deeds.Kind.WRITE,
                context.method() + " " + context.path(),
                Integer.toString(context.statusCode()));
      }
    } catch (RuntimeException unwritten) {
      LOG.error("{} {} is missing in the trail", context.method(), context.path(), unwritten);
    } finally {
      Actor.leave();
    }
  }
}
