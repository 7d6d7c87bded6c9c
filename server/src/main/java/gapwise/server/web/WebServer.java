package gapwise.server.web;

import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.evidence.Citation;
import gapwise.search.StudySearch;
import gapwise.server.account.Gate;
import gapwise.server.account.Right;
import gapwise.server.address.PagePaths;
import gapwise.server.admission.Admission;
import gapwise.server.admission.Bounds;
import gapwise.server.api.Api;
import gapwise.server.api.ExtractionApi;
import gapwise.server.api.ReviewApi;
import gapwise.server.home.Evidence;
import gapwise.server.home.Hold;
import gapwise.server.home.Home;
import gapwise.server.home.ReviewWork;
import gapwise.server.job.ImportJobs;
import gapwise.server.job.SheetTray;
import gapwise.server.job.UploadFolder;
import gapwise.server.job.reference.ReferenceJobs;
import gapwise.server.kept.KeptAnswers;
import gapwise.server.page.Assets;
import gapwise.server.page.ErrorPage;
import gapwise.server.page.MethodPage;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.claim.ClaimPage;
import gapwise.server.page.course.CoursePage;
import gapwise.server.page.desk.DeskPage;
import gapwise.server.page.desk.DraftPage;
import gapwise.server.page.desk.HandInPage;
import gapwise.server.page.desk.OwnDrafts;
import gapwise.server.page.desk.ReadPage;
import gapwise.server.page.desk.TablePage;
import gapwise.server.page.desk.VersionsPage;
import gapwise.server.page.extraction.ExtractionPages;
import gapwise.server.page.figure.FigurePage;
import gapwise.server.page.figure.PicturePages;
import gapwise.server.page.kept.KeptQuestionsPage;
import gapwise.server.page.map.EvidencePage;
import gapwise.server.page.map.MapPage;
import gapwise.server.page.option.ComparePage;
import gapwise.server.page.option.CostPage;
import gapwise.server.page.option.FindingsFiles;
import gapwise.server.page.option.JudgementPage;
import gapwise.server.page.option.WeighingPage;
import gapwise.server.page.overlap.OverlapsPage;
import gapwise.server.page.paper.PaperPages;
import gapwise.server.page.people.PeoplePages;
import gapwise.server.page.place.CasePage;
import gapwise.server.page.reference.KeptPage;
import gapwise.server.page.reference.PairsPage;
import gapwise.server.page.reference.ReferencesPage;
import gapwise.server.page.result.BySizePage;
import gapwise.server.page.result.FunnelPage;
import gapwise.server.page.result.PooledPage;
import gapwise.server.page.result.TypedQuestion;
import gapwise.server.page.review.ReviewPage;
import gapwise.server.page.screening.ApartPage;
import gapwise.server.page.screening.ChoosePage;
import gapwise.server.page.screening.ScreeningPage;
import gapwise.server.page.sheet.SheetPage;
import gapwise.server.page.studies.ImportPage;
import gapwise.server.page.studies.SelectedValues;
import gapwise.server.page.studies.StudiesPage;
import gapwise.server.page.studies.StudyPage;
import gapwise.server.page.studies.SuggestPart;
import gapwise.server.page.untidy.UntidyPage;
import gapwise.server.route.EvidenceRoutes;
import gapwise.server.route.Routes;
import gapwise.server.route.ServerRoutes;
import gapwise.server.security.Headers;
import gapwise.server.security.Reach;
import gapwise.server.security.ReadableText;
import gapwise.server.security.SameOrigin;
import gapwise.server.supplement.SupplementDownloads;
import gapwise.server.supplement.Supplements;
import io.javalin.Javalin;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.security.RouteRole;
import java.nio.file.Path;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;

/** The web server over one open home: pages and API, every route by hand. */
public final class WebServer implements AutoCloseable {
  private final Javalin javalin;
  private final ImportJobs jobs;
  private final ReferenceJobs references;
  private final Admission admission;

  private WebServer(
      Javalin javalin, ImportJobs jobs, ReferenceJobs references, Admission admission) {
    this.javalin = javalin;
    this.jobs = jobs;
    this.references = references;
    this.admission = admission;
  }

  /**
   * Starts to answer.
   *
   * @param host address to listen on; a loopback address keeps it to this machine
   * @param port port to listen on; 0 takes a free one
   */
  public static WebServer start(Home home, String host, int port, String version) {
    return start(home, new Reach(host, false), port, version);
  }

  /** Starts to answer, with the usual bounds of how much is taken at once. */
  public static WebServer start(Home home, Reach reach, int port, String version) {
    return start(home, reach, port, version, Bounds.standard());
  }

  /**
   * Starts to answer.
   *
   * @param reach from where it can be reached
   * @param port port to listen on; 0 takes a free one
   * @param bounds how much is taken at once
   * @throws gapwise.server.account.NoAccountsException where others would reach it and there are no
   *     accounts; it does not listen then
   */
  public static WebServer start(Home home, Reach reach, int port, String version, Bounds bounds) {
    Gate gate = new Gate(home.people(), reach);
    gate.requireAccounts();
    Templates templates = new Templates();
    Assets assets = new Assets();
    Sites anyState = new Sites(assets, () -> holdsInvented(home), home::notices, version);
    Path uploads = UploadFolder.prepared(home.folder().resolve("uploads"));
    ImportJobs jobs = new ImportJobs(home.base(), uploads);
    SheetTray tray = new SheetTray(uploads);
    ReferenceJobs references =
        new ReferenceJobs(() -> citations(home), home.referenceBase(), uploads);
    SameOrigin sameOrigin = new SameOrigin(reach);
    PeoplePages people = new PeoplePages(templates, anyState, home.people(), gate, reach);
    ErrorPage errors = new ErrorPage(templates, anyState);
    EdgeFailures edge = new EdgeFailures(errors);
    Admission admission = new Admission(bounds, uploads, edge);
    Javalin javalin =
        Javalin.create(
            config -> {
              Settings.apply(config, uploads);
              admission.addTo(config, reach.host(), port);
              config.jetty.modifyServer(server -> server.setErrorHandler(edge));
              config.jetty.modifyServletContextHandler(inside -> inside.setErrorHandler(edge));
              RoutesConfig routes = config.routes;
              routes.before(Headers::on);
              routes.before(sameOrigin::check);
              routes.before(SameOrigin::refuseOtherMethod);
              routes.before(ReadableText::check);
              gate.addTo(routes);
              routes.before(new OwnDrafts(home.drafts())::check);
              Routes added = new ServerRoutes(routes);
              assets.addTo(added);
              people.addTo(added);
              added.get(PagePaths.HEALTH, Right.OPEN, WebServer::health);
              new EvidenceRoutes(
                      home, pages(home, templates, assets, jobs, tray, references, version))
                  .addTo(added);
              new Failures(errors, people.signIn()).addTo(routes);
            });
    javalin.start();
    return new WebServer(javalin, jobs, references, admission);
  }

  private static Map<String, Citation> citations(Home home) {
    Map<String, Citation> citations = new LinkedHashMap<>();
    try (Hold hold = home.hold()) {
      hold.evidence()
          .studies()
          .forEach(kept -> citations.put(kept.study().id(), kept.study().citation()));
    }
    return citations;
  }

  private static boolean holdsInvented(Home home) {
    try (Hold hold = home.hold()) {
      return hold.evidence().hasInvented();
    }
  }

  /** Every page and every route of the API, made for one state of the evidence base. */
  private static BiConsumer<Evidence, Routes> pages(
      Home home,
      Templates templates,
      Assets assets,
      ImportJobs jobs,
      SheetTray tray,
      ReferenceJobs references,
      String version) {
    return (evidence, routes) -> {
      Sites sites = new Sites(assets, evidence::hasInvented, home::notices, version);
      Answers answers = evidence.answers();
      StudySearch search = evidence.search();
      Edition edition = evidence.edition(version);
      new EvidencePage(templates, sites, search, evidence.studies()).addTo(routes);
      new StudyPage(templates, sites, evidence.studies(), home.references(), home.extractions())
          .addTo(routes);
      new StudiesPage(
              templates,
              sites,
              search,
              evidence::studies,
              new SelectedValues(evidence.selector()),
              home.references(),
              Clock.systemUTC())
          .addTo(routes);
      new SuggestPart(templates, search).addTo(routes);
      new TypedQuestion().addTo(routes);
      new ComparePage(templates, sites, evidence.options(), home.review()).addTo(routes);
      new FindingsFiles(evidence, edition, Clock.systemUTC()).addTo(routes);
      new SupplementDownloads(
              new Supplements(evidence, edition, () -> home.screeningFlow().drawn()))
          .addTo(routes);
      new WeighingPage(templates, sites, evidence.options(), evidence.averages(), edition)
          .addTo(routes);
      new CostPage(templates, sites, evidence.options(), evidence.averages(), edition)
          .addTo(routes);
      new JudgementPage(templates, sites, evidence.options(), home.base()).addTo(routes);
      new SheetPage(templates, sites, evidence, edition, Clock.systemUTC()).addTo(routes);
      new PooledPage(templates, sites, search, answers, edition).addTo(routes);
      new FunnelPage(templates, sites, search, answers, edition).addTo(routes);
      new BySizePage(templates, sites, search, answers, edition).addTo(routes);
      new CoursePage(templates, sites, search, answers, evidence.courses(), edition).addTo(routes);
      new MapPage(templates, sites, search, evidence::study, edition).addTo(routes);
      new CasePage(templates, sites, answers, search, evidence::study, edition).addTo(routes);
      new ClaimPage(templates, sites, search, evidence.claims(), edition, home.review())
          .addTo(routes);
      new ImportPage(templates, sites, jobs, evidence::study).addTo(routes);
      new VersionsPage(templates, sites, evidence.studies(), home.base()).addTo(routes);
      new DeskPage(templates, sites, home.drafts(), evidence.studies()).addTo(routes);
      new DraftPage(templates, sites, home.drafts(), home.papers()).addTo(routes);
      new TablePage(templates, sites, home.drafts(), home.papers()).addTo(routes);
      new ReadPage(templates, home.drafts(), home.papers()).addTo(routes);
      new PaperPages(templates, sites, home.papers(), home.pictures()).addTo(routes);
      new FigurePage(templates, sites, home.drafts(), home.papers(), home.pictures()).addTo(routes);
      new PicturePages(home.drafts(), home.pictures()).addTo(routes);
      new HandInPage(templates, sites, home, evidence.studies(), Clock.systemUTC()).addTo(routes);
      new OverlapsPage(templates, sites, evidence, home.base(), Clock.systemUTC()).addTo(routes);
      new UntidyPage(templates, sites, tray, jobs, home.mappings()).addTo(routes);
      new KeptPage(templates, sites, home, evidence).addTo(routes);
      new PairsPage(templates, sites, home, evidence, Clock.systemUTC()).addTo(routes);
      new ReferencesPage(templates, sites, references, home, Clock.systemUTC()).addTo(routes);
      new ScreeningPage(templates, sites, home).addTo(routes);
      new ChoosePage(templates, sites, home, Clock.systemUTC()).addTo(routes);
      new ApartPage(templates, sites, home, Clock.systemUTC()).addTo(routes);
      ReviewWork work = new ReviewWork(home, evidence);
      KeptAnswers kept = new KeptAnswers(evidence, version);
      new ReviewPage(templates, sites, home, work).addTo(routes);
      new KeptQuestionsPage(templates, sites, home.keptQuestions(), kept, evidence.studies())
          .addTo(routes);
      new ReviewApi(home, work, kept).addTo(routes);
      new ExtractionPages(templates, sites, home, evidence.studies(), Clock.systemUTC())
          .addTo(routes);
      new ExtractionApi(home.extractions()).addTo(routes);
      new MethodPage(templates, sites).addTo(routes);
      new Api(evidence, jobs, home::notice, edition).addTo(routes);
    };
  }

  /** Says that requests are answered, and that the records can be read, since the gate did. */
  private static void health(Context context) {
    context.contentType("text/plain; charset=utf-8").result("up\n");
  }

  /** What is asked for at every address that is answered, by method and path. */
  public Map<String, Set<RouteRole>> rights() {
    return RouteList.rights(javalin);
  }

  /** Every address that is answered, as method and path, such as "GET /studies/{id}". */
  public Set<String> routes() {
    return rights().keySet();
  }

  /** The port that is listened on. */
  public int port() {
    return javalin.port();
  }

  @Override
  public void close() {
    javalin.stop();
    admission.close();
    jobs.close();
    references.close();
  }
}
