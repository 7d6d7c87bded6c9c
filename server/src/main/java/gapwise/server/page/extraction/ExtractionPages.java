package gapwise.server.page.extraction;

import gapwise.curation.StudiesAt;
import gapwise.server.home.Home;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import java.time.Clock;

/** Every page of papers that two people extract apart. */
public final class ExtractionPages {
  private final Templates templates;
  private final Sites sites;
  private final Home home;
  private final StudiesAt studies;
  private final Clock clock;

  public ExtractionPages(
      Templates templates, Sites sites, Home home, StudiesAt studies, Clock clock) {
    this.templates = templates;
    this.sites = sites;
    this.home = home;
    this.studies = studies;
    this.clock = clock;
  }

  /** Adds their routes. */
  public void addTo(Routes routes) {
    new ExtractionPage(templates, sites, home, clock).addTo(routes);
    new AgreementPage(templates, sites, home).addTo(routes);
    new PaperPage(templates, sites, home, studies, clock).addTo(routes);
    new SettlePage(templates, sites, home, clock).addTo(routes);
    new FinishPage(home, clock).addTo(routes);
  }
}
