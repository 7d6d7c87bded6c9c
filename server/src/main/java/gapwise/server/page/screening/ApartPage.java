package gapwise.server.page.screening;

import static gapwise.sentence.Sentences.say;

import gapwise.screening.Protocol;
import gapwise.screening.Ruling;
import gapwise.screening.Stage;
import gapwise.screening.Standing;
import gapwise.screening.Vote;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Home;
import gapwise.server.home.Screening;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What two people chose differently, side by side, to be settled with a reason. */
public final class ApartPage {
  /** Papers on one page. */
  private static final int MOST = 25;

  private final Templates templates;
  private final Sites sites;
  private final Home home;
  private final Clock clock;

  public ApartPage(Templates templates, Sites sites, Home home, Clock clock) {
    this.templates = templates;
    this.sites = sites;
    this.home = home;
    this.clock = clock;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.SCREENING_APART, Right.SETTLE, this::show);
    routes.post(PagePaths.SCREENING_APART, Right.SETTLE, this::settle);
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    Stage stage = ScreeningForm.stage(address.first("stage"));
    Screening.Shown shown = home.screening().shown();
    Protocol protocol = home.screening().base().protocol();
    Map<String, Standing.Apart> apart = shown.board().apart(stage);
    List<ApartView.One> pairs = new ArrayList<>();
    for (Map.Entry<String, Standing.Apart> one : apart.entrySet()) {
      if (pairs.size() == MOST) {
        break;
      }
      Paper.of(
              home.referenceBase().find(one.getKey()),
              protocol,
              shown.shelf().groups().of(one.getKey()).size() - 1)
          .ifPresent(
              paper ->
                  pairs.add(
                      new ApartView.One(
                          paper,
                          one.getValue().votes().stream().map(ApartPage::chosen).toList(),
                          settling(stage, protocol))));
    }
    templates.show(
        context,
        "screening/ApartPage",
        new ApartView(
            sites.of(say("screening.apart-title"), Place.SCREENING),
            ScreeningForm.reader(address.first("who")).map(one -> one.name()).orElse(""),
            stage.code(),
            stage.label(),
            apart.size(),
            pairs));
  }

  private static List<ChooseView.Button> settling(Stage stage, Protocol protocol) {
    return ChoosePage.buttons(stage, protocol, Optional.empty()).stream()
        .filter(button -> !button.value().equals("unsure"))
        .toList();
  }

  private static ApartView.Chosen chosen(Vote vote) {
    return new ApartView.Chosen(
        vote.reader().name(),
        vote.reason()
            .map(reason -> say("screening.leave-out-since", Map.of("reason", reason)))
            .orElse(vote.choice().label()));
  }

  private void settle(Context context) {
    PostedForm posted = new PostedForm(context);
    ScreeningForm form = new ScreeningForm(posted::first, home.screening().base().protocol());
    String id = posted.first("paper");
    Stage stage = ScreeningForm.stage(posted.first("stage"));
    if (!(home.screening().shown().board().standing(stage, id) instanceof Standing.Apart)) {
      throw ScreeningForm.wrong("paper", "settled-already", say("screening.settled-already"));
    }
    Ruling ruling = form.ruling(id, clock.instant());
    home.screening().base().settle(ruling);
    context.redirect(
        ChoosePage.address(ruling.stage(), ruling.who()).at(PagePaths.SCREENING_APART),
        HttpStatus.SEE_OTHER);
  }
}
