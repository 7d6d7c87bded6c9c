package gapwise.server.page.screening;

import static gapwise.sentence.Sentences.say;

import gapwise.reference.kept.KeptReference;
import gapwise.screening.Board;
import gapwise.screening.Choice;
import gapwise.screening.Protocol;
import gapwise.screening.Reader;
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
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One reference after another, a key a choice; nobody sees here what another chose. */
public final class ChoosePage {
  private final Templates templates;
  private final Sites sites;
  private final Home home;
  private final Clock clock;

  public ChoosePage(Templates templates, Sites sites, Home home, Clock clock) {
    this.templates = templates;
    this.sites = sites;
    this.home = home;
    this.clock = clock;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.SCREENING_READ, Right.EXTRACT, this::show);
    routes.post(PagePaths.SCREENING_READ, Right.EXTRACT, this::choose);
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    Stage stage = ScreeningForm.stage(address.first("stage"));
    Optional<Reader> reader = ScreeningForm.reader(address.first("who"));
    if (reader.isEmpty()) {
      context.redirect(PagePaths.SCREENING, HttpStatus.SEE_OTHER);
      return;
    }
    Screening.Shown shown = home.screening().shown();
    templates.show(
        context,
        "screening/ChoosePage",
        address.first("paper").isBlank()
            ? next(shown, stage, reader.get())
            : again(shown, stage, reader.get(), address.first("paper")));
  }

  private Site site(Stage stage) {
    return sites.of(say("screening.read-title", Map.of("stage", stage.label())), Place.SCREENING);
  }

  private ChooseView next(Screening.Shown shown, Stage stage, Reader reader) {
    List<String> left = shown.board().next(stage, reader);
    Protocol protocol = home.screening().base().protocol();
    for (String id : left) {
      // A record that is damaged is passed over; the page of soundness tells of it.
      Optional<KeptReference> kept = home.referenceBase().find(id);
      if (kept.isPresent()) {
        return one(shown, stage, reader, kept.get(), protocol, left.size());
      }
    }
    Board board = shown.board();
    int open =
        (int)
            board.papers(stage).stream()
                .filter(id -> board.standing(stage, id) instanceof Standing.Waiting)
                .count();
    return new ChooseView.Done(
        site(stage),
        reader.name(),
        stage.label(),
        board.apart(stage).size(),
        open,
        before(board, stage, reader, Optional.empty()));
  }

  /** What this person chose before, to be chosen otherwise; of others she sees nothing. */
  private ChooseView again(Screening.Shown shown, Stage stage, Reader reader, String id) {
    boolean read = shown.board().papers(stage).contains(id);
    KeptReference kept =
        (read ? home.referenceBase().find(id) : Optional.<KeptReference>empty())
            .orElseThrow(() -> new NotFoundResponse(say("screening.no-such-paper")));
    return one(
        shown,
        stage,
        reader,
        kept,
        home.screening().base().protocol(),
        shown.board().next(stage, reader).size());
  }

  private ChooseView.One one(
      Screening.Shown shown,
      Stage stage,
      Reader reader,
      KeptReference kept,
      Protocol protocol,
      int left) {
    Optional<Vote> mine = shown.board().mine(stage, kept.id(), reader);
    return new ChooseView.One(
        site(stage),
        reader.name(),
        stage.code(),
        stage.label(),
        Paper.of(kept, protocol, shown.shelf().groups().of(kept.id()).size() - 1),
        buttons(stage, protocol, mine),
        left,
        before(shown.board(), stage, reader, Optional.of(kept.id())),
        mine.isPresent());
  }

  /** The one chosen last before the one that is shown. */
  private static Optional<String> before(
      Board board, Stage stage, Reader reader, Optional<String> shown) {
    List<String> chosen = board.by(stage, reader).stream().map(Vote::reference).distinct().toList();
    int at = shown.map(chosen::indexOf).orElse(-1);
    return at + 1 < chosen.size()
        ? Optional.of(address(stage, reader).with("paper", chosen.get(at + 1)).at(READ))
        : Optional.empty();
  }

  private static final String READ = PagePaths.SCREENING_READ;

  static Address address(Stage stage, Reader reader) {
    return new Address(Map.of("who", List.of(reader.name()), "stage", List.of(stage.code())));
  }

  static List<ChooseView.Button> buttons(Stage stage, Protocol protocol, Optional<Vote> mine) {
    List<ChooseView.Button> buttons = new ArrayList<>();
    buttons.add(button(Choice.KEEP, "k", mine));
    if (stage.offers(Choice.UNSURE)) {
      buttons.add(button(Choice.UNSURE, "u", mine));
    }
    if (!stage.asksReason()) {
      buttons.add(button(Choice.EXCLUDE, "x", mine));
    } else {
      for (int i = 1; i <= protocol.reasons().size(); i++) {
        String reason = protocol.reasons().get(i - 1);
        buttons.add(
            new ChooseView.Button(
                Choice.EXCLUDE.code() + " " + reason,
                say("screening.leave-out-since", Map.of("reason", reason)),
                Integer.toString(i),
                mine.flatMap(Vote::reason).filter(reason::equals).isPresent()));
      }
      buttons.add(button(Choice.NOT_HAD, "n", mine));
    }
    return List.copyOf(buttons);
  }

  private static ChooseView.Button button(Choice choice, String key, Optional<Vote> mine) {
    return new ChooseView.Button(
        choice.code(),
        choice.label(),
        key,
        mine.filter(vote -> vote.choice() == choice).isPresent());
  }

  private void choose(Context context) {
    PostedForm posted = new PostedForm(context);
    ScreeningForm form = new ScreeningForm(posted::first, home.screening().base().protocol());
    String id = posted.first("paper");
    Stage stage = ScreeningForm.stage(posted.first("stage"));
    if (!home.screening().shown().board().papers(stage).contains(id)) {
      throw new NotFoundResponse(say("screening.no-such-paper"));
    }
    Vote vote = form.vote(id, clock.instant());
    home.screening().base().vote(vote);
    context.redirect(address(vote.stage(), vote.reader()).at(READ), HttpStatus.SEE_OTHER);
  }
}
