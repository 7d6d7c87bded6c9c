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
import gapwise.server.account.Token;
import gapwise.server.address.PagePaths;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The accounts of all, for administrators. */
final class TeamPage {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("uuuu-MM-dd").withZone(ZoneOffset.UTC);

  private final Templates templates;
  private final Sites sites;
  private final People people;
  private final Passwords passwords;
  private final Gate gate;

  TeamPage(Templates templates, Sites sites, People people, Passwords passwords, Gate gate) {
    this.templates = templates;
    this.sites = sites;
    this.people = people;
    this.passwords = passwords;
    this.gate = gate;
  }

  void addTo(Routes routes) {
    String one = PagePaths.PEOPLE + "/{name}";
    routes.get(PagePaths.PEOPLE, Right.ADMINISTER, context -> show(context, "", Optional.empty()));
    routes.post(PagePaths.PEOPLE, Right.ADMINISTER, this::add);
    routes.post(one + "/role", Right.ADMINISTER, this::role);
    routes.post(one + "/password", Right.ADMINISTER, this::password);
    routes.post(one + "/close", Right.ADMINISTER, this::close);
    routes.post(PagePaths.PEOPLE + "/tokens/{token}/end", Right.ADMINISTER, this::endToken);
  }

  private void show(Context context, String words, Optional<TeamView.Given> given) {
    Site site = sites.of(say("people.title"), Place.NONE);
    TeamView view =
        Actor.now().account().isEmpty()
            ? new TeamView.Alone(site)
            : new TeamView.Team(
                site,
                words,
                given,
                people.accounts().all().stream().map(TeamPage::person).toList(),
                List.of(Role.values()),
                people.tokens().all().stream()
                    .map(token -> TokenLine.of(token, people.clock().instant()))
                    .toList());
    templates.show(context, "people/TeamPage", view);
  }

  private static TeamView.Person person(Account account) {
    String key = URLEncoder.encode(account.key(), StandardCharsets.UTF_8).replace("+", "%20");
    return new TeamView.Person(
        account.name(),
        key,
        PagePaths.PEOPLE + "/" + key,
        account.role(),
        DAY.format(account.made()),
        account.closed());
  }

  private void refused(Context context, HttpStatus status, String words) {
    context.status(status);
    show(context, words, Optional.empty());
  }

  /** Who does it; alone there is nobody, and the first account is made by the command. */
  private static String by() {
    return Actor.now().name().orElseThrow(() -> new NotFoundResponse(say("people.alone")));
  }

  private Account asked(Context context) {
    by();
    return people
        .accounts()
        .find(context.pathParam("name"))
        .filter(account -> !account.closed())
        .orElseThrow(() -> new NotFoundResponse(say("people.no-such")));
  }

  private void add(Context context) {
    String by = by();
    PostedForm form = new PostedForm(context);
    Optional<String> name = Account.tidy(form.first("name"));
    Optional<Role> role = Role.find(form.first("role"));
    if (name.isEmpty() || role.isEmpty()) {
      refused(context, HttpStatus.UNPROCESSABLE_CONTENT, say("people.name-wrong"));
      return;
    }
    String password = Passwords.made();
    Account account =
        Account.begun(name.get(), role.get(), passwords.hash(password), people.clock());
    if (!people.accounts().add(account.asGiven(), by)) {
      refused(context, HttpStatus.CONFLICT, say("people.name-taken", Map.of("name", name.get())));
      return;
    }
    gate.deeds(context).add(Kind.ACCOUNT_MADE, account.name(), account.role().word());
    show(context, "", Optional.of(new TeamView.Given(account.name(), password)));
  }

  private void role(Context context) {
    Account account = asked(context);
    Role role =
        Role.find(new PostedForm(context).first("role"))
            .orElseThrow(() -> new NotFoundResponse(say("people.no-such")));
    if (role != Role.ADMINISTRATOR && people.accounts().isLastAdministrator(account)) {
      refused(context, HttpStatus.CONFLICT, say("people.last"));
      return;
    }
    people.accounts().change(account.name(), now -> now.with(role), by());
    String change = account.role().word() + " to " + role.word();
    gate.deeds(context).add(Kind.ROLE_CHANGED, account.name(), change);
    context.redirect(PagePaths.PEOPLE, HttpStatus.SEE_OTHER);
  }

  private void password(Context context) {
    Account account = asked(context);
    String password = Passwords.made();
    String hash = passwords.hash(password);
    people.accounts().change(account.name(), now -> now.withPassword(hash, true), by());
    people.sessions().endAll(account);
    gate.deeds(context).add(Kind.PASSWORD_CHANGED, account.name(), "by an administrator");
    show(context, "", Optional.of(new TeamView.Given(account.name(), password)));
  }

  private void close(Context context) {
    Account account = asked(context);
    if (people.accounts().isLastAdministrator(account)) {
      refused(context, HttpStatus.CONFLICT, say("people.last"));
      return;
    }
    people.accounts().change(account.name(), Account::shut, by());
    people.sessions().endAll(account);
    people.tokens().endAll(account);
    gate.deeds(context).add(Kind.ACCOUNT_CLOSED, account.name(), account.role().word());
    context.redirect(PagePaths.PEOPLE, HttpStatus.SEE_OTHER);
  }

  private void endToken(Context context) {
    by();
    Token ended =
        people
            .tokens()
            .end(context.pathParam("token"))
            .orElseThrow(() -> new NotFoundResponse(say("people.no-such-token")));
    gate.deeds(context).add(Kind.TOKEN_ENDED, ended.label(), ended.owner());
    context.redirect(PagePaths.PEOPLE, HttpStatus.SEE_OTHER);
  }
}
