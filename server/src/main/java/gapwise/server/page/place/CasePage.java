package gapwise.server.page.place;

import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.figure.drawing.Medium;
import gapwise.figure.timeline.Timeline;
import gapwise.figure.timeline.TimelineDrawing;
import gapwise.place.CaseTimeline;
import gapwise.place.PatientCase;
import gapwise.place.PlacedCase;
import gapwise.place.PlacedCases;
import gapwise.server.address.Address;
import gapwise.server.address.CaseAddress;
import gapwise.server.address.PagePaths;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TwoWidths;
import gapwise.server.route.Routes;
import io.javalin.http.Context;

/** One case held against published evidence; the case stands in the address and nowhere else. */
public final class CasePage {
  private final Templates templates;
  private final Sites sites;
  private final PlacedCases cases;
  private final Edition edition;

  public CasePage(Templates templates, Sites sites, Answers answers, Edition edition) {
    this.templates = templates;
    this.sites = sites;
    this.cases = new PlacedCases(answers);
    this.edition = edition;
  }

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.CASE, this::show);
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(context, "place/CasePage", view(address));
  }

  private CaseView view(Address address) {
    return CaseAddress.read(address)
        .<CaseView>map(patientCase -> placed(address, patientCase))
        .orElseGet(() -> new CaseView.Empty(site(address), new CaseForm(address)));
  }

  private CaseView.Placed placed(Address address, PatientCase patientCase) {
    PlacedCase placed = cases.place(patientCase);
    return new CaseView.Placed(
        site(address),
        new CaseForm(address),
        placed,
        CaseTimeline.of(placed, edition).map(timeline -> drawn(timeline, address)),
        CourseLines.of(patientCase.course()));
  }

  private Site site(Address address) {
    return sites.of("Place a case", Place.CASE, address);
  }

  private static CaseView.Drawn drawn(Timeline timeline, Address address) {
    return new CaseView.Drawn(
        timeline,
        new TwoWidths(
            TimelineDrawing.draw(timeline, Medium.PAGE).get(0).inline(),
            TimelineDrawing.draw(timeline, Medium.PHONE).get(0).inline()),
        TakeFigure.of("/api/v1/case", address, timeline));
  }
}
