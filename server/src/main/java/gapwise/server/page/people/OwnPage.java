package gapwise.server.page.people;

import static gapwise.sentence.Sentences.say;

import gapwise.server.account.Account;
import gapwise.server.account.Actor;
import gapwise.server.account.Deeds.Kind;
import gapwise.server.account.Gate;
import gapwise.server.account.Passwords;
import gapwise.server.account.People;
import gapwise.server.account.Right;
import gapwise.server.account.Role;
import gapwise.server.account.SignIn;
import gapwise.server.account.Token;
import gapwise.server.account.Tokens;
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
import io.javalin.http.NotFoundResponse;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** One's own account: its password, its tokens. */
final class OwnPage {
  private final Templates templates;
  private final Sites sites;
  private final People people;
  private final Keys keys;
  private final Gate gate;
  private final Reach reach;

  /** What checks and makes passwords. */
  record Keys(SignIn signIn, Passwords passwords) {}

  OwnPage(Templates templates, Sites sites, People people, Keys keys, Gate gate, Reach reach) {
    this.templates = templates;
    this.sites = sites;
    this.people = people;
    this.keys = keys;
    this.gate = gate;
    this.reach = reach;
  }

  void addTo(Routes routes) {
    routes.get(PagePaths.OWN, Right.OWN, context -> show(context, "", Optional.empty()));
    routes.post(PagePaths.OWN + "/password", Right.OWN, this::password);
    routes.post(PagePaths.OWN + "/tokens", Right.OWN, this::make);
    routes.post(PagePaths.OWN + "/tokens/{token}/end", Right.OWN, this::end);
  }

  /** As it stands now; a session outlives a change that somebody else makes meanwhile. */
  private Optional<Account> own() {
    return Actor.now().name().flatMap(people.accounts()::find);
  }

  private Account required() {
    return own().orElseThrow(() -> new NotFoundResponse(say("people.alone")));
  }

  private void show(Context context, String words, Optional<String> made) {
    Site site = sites.of(say("people.own-title"), Place.NONE);
    OwnView view =
        own()
            .<OwnView>map(account -> view(site, account, words, made))
            .orElseGet(() -> new OwnView.Alone(site));
    templates.show(context, "people/OwnPage", view);
  }

  private OwnView view(Site site, Account account, String words, Optional<String> made) {
    return new OwnView.Own(
        site,
        account.name(),
        account.role(),
        account.given(),
        words,
        made,
        Stream.of(Role.values()).filter(account.role()::isAtLeast).toList(),
        people.tokens().of(account).stream()
            .map(token -> TokenLine.of(token, people.clock().instant()))
            .toList());
  }

  private void refused(Context context, String words) {
    context.status(HttpStatus.UNPROCESSABLE_CONTENT);
    show(context, words, Optional.empty());
  }

  private void password(Context context) {
    Account account = required();
    PostedForm form = new PostedForm(context);
    String wanted = raw(form, "new");
    Optional<String> wrong =
        Passwords.wrong(wanted, account.name())
            .or(
                () ->
                    wanted.equals(raw(form, "again"))
                        ? Optional.empty()
                        : Optional.of(say("people.not-twice")));
    if (wrong.isPresent()) {
      refused(context, wrong.get());
      return;
    }
    if (!keys.signIn().isOwn(account, raw(form, "old"), reach.peer(context))) {
      refused(context, say("people.not-old"));
      return;
    }
    String hash = keys.passwords().hash(wanted);
    Account changed =
        people
            .accounts()
            .change(account.name(), now -> now.withPassword(hash, false), account.name())
            .orElseThrow();
    people.sessions().endAll(account);
    gate.welcome(context, people.sessions().begin(changed));
    gate.deeds(context).add(Kind.PASSWORD_CHANGED, account.name(), "own");
    show(context, say("people.password-changed"), Optional.empty());
  }

  /** A password is taken as it is, blanks at its ends too. */
  private static String raw(PostedForm form, String name) {
    return form.values(name).stream().findFirst().orElse("");
  }

  private void make(Context context) {
    Account account = required();
    PostedForm form = new PostedForm(context);
    String label = form.first("label");
    String days = form.first("days");
    Optional<Role> role = Role.find(form.first("role")).filter(account.role()::isAtLeast);
    int most = (int) Token.LONGEST.toDays();
    boolean known = days.matches("\\d{1,3}") && Integer.parseInt(days) >= 1;
    if (label.isEmpty()
        || label.length() > Token.LONGEST_LABEL
        || role.isEmpty()
        || !known
        || Integer.parseInt(days) > most) {
      refused(
          context, say("people.token-wrong", Map.of("most", Token.LONGEST_LABEL, "days", most)));
      return;
    }
    if (account.given()) {
      refused(context, say("people.choose-first"));
      return;
    }
    if (people.tokens().of(account).size() >= Tokens.MOST_OF_ONE) {
      refused(context, say("people.many-tokens", Map.of("most", Tokens.MOST_OF_ONE)));
      return;
    }
    String secret =
        people.tokens().make(account, label, role.get(), Duration.ofDays(Integer.parseInt(days)));
    gate.deeds(context).add(Kind.TOKEN_MADE, label, role.get().word() + ", " + days + " days");
    show(context, "", Optional.of(secret));
  }

  private void end(Context context) {
    Account account = required();
    String id = context.pathParam("token");
    boolean own = people.tokens().of(account).stream().anyMatch(token -> token.id().equals(id));
    Token ended =
        (own ? people.tokens().end(id) : Optional.<Token>empty())
            .orElseThrow(() -> new NotFoundResponse(say("people.no-such-token")));
    gate.deeds(context).add(Kind.TOKEN_ENDED, ended.label(), account.name());
    context.redirect(PagePaths.OWN, HttpStatus.SEE_OTHER);
  }
}
