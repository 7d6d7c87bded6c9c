package gapwise.server.page.screening;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.flow.FlowChart;
import gapwise.figure.value.Shown;
import gapwise.screening.Agreement;
import gapwise.screening.Board;
import gapwise.screening.Flow;
import gapwise.screening.Protocol;
import gapwise.screening.Reader;
import gapwise.screening.Stage;
import gapwise.screening.Standing;
import gapwise.server.account.Actor;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.download.Attachment;
import gapwise.server.download.FigureDownloads;
import gapwise.server.home.Home;
import gapwise.server.home.Screening;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TwoWidths;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** How screening stands: what is left for whom, how far people agree, and the flow of records. */
public final class ScreeningPage {
  /** Where the files of the flow are. */
  public static final String FLOW = "/api/v1/screening-flow";

  private static final String LEFT_OUT = PagePaths.SCREENING + "/left-out.csv";

  private final Templates templates;
  private final Sites sites;
  private final Home home;

  public ScreeningPage(Templates templates, Sites sites, Home home) {
    this.templates = templates;
    this.sites = sites;
    this.home = home;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.SCREENING, Right.SEE, this::show);
    routes.post(PagePaths.SCREENING + "/protocol", Right.SETTLE, this::agree);
    routes.get(
        LEFT_OUT,
        Right.SEE,
        context ->
            Attachment.send(
                context,
                "text/csv; charset=utf-8",
                "left-out.csv",
                LeftOutCsv.of(home.screening().shown())));
    FigureDownloads.add(routes, FLOW, context -> home.screeningFlow().chart());
  }

  private Site site() {
    return sites.of(say("screening.title"), Place.SCREENING);
  }

  private void show(Context context) {
    Screening.Shown shown = home.screening().shown();
    boolean proposed = new Address(context.queryParamMap()).has("reasons", "review");
    templates.show(context, "screening/ScreeningPage", view(shown, proposed));
  }

  private ScreeningView view(Screening.Shown shown, boolean proposed) {
    if (shown.shelf().lines().isEmpty()) {
      return new ScreeningView.Nothing(site());
    }
    // Read before the protocol, so that a change between the two is refused and never overwritten.
    int version = home.screening().base().protocolVersion();
    Flow flow = home.screeningFlow().flow(shown);
    FlowChart chart = home.screeningFlow().chart(flow);
    return new ScreeningView.Under(
        site(),
        Arrays.stream(Stage.values()).map(stage -> at(shown.board(), stage)).toList(),
        flow,
        TwoWidths.of(chart),
        TakeFigure.of(FLOW, new Address(Map.of()), chart),
        home.screening().base().protocol(),
        version,
        proposals(home.screening().base().protocol()),
        proposed);
  }

  private static ScreeningView.AtStage at(Board board, Stage stage) {
    List<String> papers = board.papers(stage);
    int decided =
        (int)
            papers.stream()
                .filter(id -> board.standing(stage, id) instanceof Standing.Decided)
                .count();
    return new ScreeningView.AtStage(
        stage.code(),
        stage.label(),
        papers.size(),
        decided,
        board.apart(stage).size(),
        board.readers(stage).entrySet().stream()
            .map(one -> read(board, stage, one.getKey(), one.getValue()))
            .toList(),
        board.agreement(stage).stream().map(ScreeningPage::words).toList());
  }

  /** Why the review leaves a study out, as far as no reason of the protocol says so already. */
  private List<String> proposals(Protocol protocol) {
    return home.review().latest().stream()
        .flatMap(version -> version.review().exclude().stream())
        .filter(reason -> reason.length() <= Protocol.LONGEST)
        .filter(reason -> protocol.reasons().stream().noneMatch(reason::equalsIgnoreCase))
        .toList();
  }

  private static ScreeningView.Read read(Board board, Stage stage, Reader reader, int count) {
    return new ScreeningView.Read(
        reader.name(),
        count,
        board.next(stage, reader).size(),
        ChoosePage.address(stage, reader).at(PagePaths.SCREENING_READ),
        Actor.now().name().map(reader.name()::equalsIgnoreCase).orElse(true));
  }

  private static String words(Agreement two) {
    Map<String, Object> told = new HashMap<>();
    told.put("first", two.first().name());
    told.put("second", two.second().name());
    told.put("papers", two.papers());
    if (two.alike() == two.papers()) {
      return say("screening.agree-on-all", told);
    }
    told.put("alike", two.alike());
    Optional<Agreement.Beyond> kappa = two.kappa();
    if (kappa.isEmpty()) {
      return say("screening.agree-without-kappa", told);
    }
    told.put("kappa", Shown.number(kappa.get().estimate()));
    told.put("lower", Shown.number(kappa.get().lower()));
    told.put("upper", Shown.number(kappa.get().upper()));
    return say("screening.agree", told);
  }

  private void agree(Context context) {
    PostedForm posted = new PostedForm(context);
    ScreeningForm form = new ScreeningForm(posted::first, Protocol.USUAL);
    Reader who = form.required("who");
    String seen = posted.first("seen");
    boolean kept =
        home.screening()
            .base()
            .keep(
                form.newProtocol(),
                who.name(),
                say("screening.protocol-changed"),
                seen.matches("\\d{1,9}") ? Integer.parseInt(seen) : 0);
    if (!kept) {
      throw ScreeningForm.wrong("seen", "changed-meanwhile", say("screening.protocol-meanwhile"));
    }
    context.redirect(PagePaths.SCREENING, HttpStatus.SEE_OTHER);
  }
}
